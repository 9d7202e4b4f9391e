package org.seamledger.http.answer;

/** A refusal: what RFC 9457 calls a problem, thrown on the way to {@link Problems}. */
public final class HttpProblem extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final int status;
  private final String code;

  /**
   * @param status HTTP status
   * @param code short stable name, such as {@code upload/too-large}
   * @param detail one line for people: what is wrong and what to do
   */
  public HttpProblem(int status, String code, String detail) {
    super(detail);
    this.status = status;
    this.code = code;
  }

  int status() {
    return status;
  }

  String code() {
    return code;
  }

  public static HttpProblem badRequest(String code, String detail) {
    return new HttpProblem(400, code, detail);
  }

  public static HttpProblem diskFull() {
    return new HttpProblem(507, "storage/full", "The disk of this server is full, and nothing was saved. Whoever runs it has to make room;"
        + " then try again.");
  }

  public static HttpProblem notFound(String detail) {
    return new HttpProblem(404, "not-found", detail);
  }
}
