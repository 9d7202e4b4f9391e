package org.seamledger.http.answer;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** JSON bodies. */
public final class JsonBodies {

  public static final ObjectMapper MAPPER = new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

  private JsonBodies() {
  }

  /** An object with its fields in the order given: name, value, name, value … */
  public static Map<String, Object> object(Object... namesAndValues) {
    Map<String, Object> object = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      object.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return object;
  }

  public static byte[] bytes(Object value) {
    return text(value).getBytes(StandardCharsets.UTF_8);
  }

  public static String text(Object value) {
    try {
      return MAPPER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an answer that is not JSON", e);
    }
  }

  public static void answer(Context ctx, int status, Object value) {
    ctx.status(status).header("Cache-Control", "no-cache").result(bytes(value)).contentType("application/json");
  }

  /** The body as an object, or a problem that says what is wrong. */
  public static JsonNode body(Context ctx, int most) throws IOException {
    if (ctx.contentType() == null || !ctx.contentType().split(";")[0].trim().equalsIgnoreCase("application/json")) {
      throw new HttpProblem(415, "body/type", "Send the body as application/json.");
    }
    byte[] bytes = whole(ctx, most);
    if (bytes.length > most) {
      throw new HttpProblem(413, "body/too-large", "The body has more than " + most + " bytes.");
    }
    JsonNode node = MAPPER.readTree(bytes);
    if (node == null || !node.isObject()) {
      throw HttpProblem.badRequest("body/not-an-object", "The body must be a JSON object.");
    }
    return node;
  }

  private static byte[] whole(Context ctx, int most) {
    try {
      return ctx.bodyInputStream().readNBytes(most + 1);
    } catch (IOException | RuntimeException e) {
      // The client went away, was too slow, or sent less than it had announced.
      throw HttpProblem.badRequest("body/cut", "The body did not arrive whole.");
    }
  }

  /** A text of the body; empty where it is missing or null. */
  public static String text(JsonNode body, String name) {
    JsonNode v = body.path(name);
    if (v.isMissingNode() || v.isNull()) {
      return "";
    }
    if (!v.isTextual()) {
      throw HttpProblem.badRequest("body/value", name + " must be a text.");
    }
    return v.textValue();
  }

  public static long version(JsonNode body) {
    JsonNode v = body.path("version");
    if (!v.isIntegralNumber() || v.longValue() < 0) {
      throw HttpProblem.badRequest("body/value", "version must be the number that was read, 0 for something new.");
    }
    return v.longValue();
  }
}
