package org.seamledger.http;

import java.util.Map;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.seamledger.http.answer.Problems;

/** What the HTTP server itself refuses, before any address of ours is asked, in the form and with the headers of every other answer. */
final class ServerErrors extends ErrorHandler {

  private final Map<String, String> headers;

  /** @param headers that every answer carries */
  ServerErrors(Map<String, String> headers) {
    this.headers = Map.copyOf(headers);
  }

  @Override
  public boolean errorPageForMethod(String method) {
    return true;
  }

  @Override
  protected void generateResponse(Request request, Response response, int code, String message, Throwable cause, Callback callback) {
    headers.forEach(response.getHeaders()::put);
    response.getHeaders().put(HttpHeader.CONTENT_TYPE, Problems.TYPE);
    response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
    Content.Sink.write(response, true, Problems.ofServer(code), callback);
  }
}
