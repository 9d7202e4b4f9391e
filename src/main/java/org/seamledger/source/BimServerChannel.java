package org.seamledger.source;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import org.bimserver.client.json.JsonChannel;
import org.bimserver.interfaces.SServiceInterfaceService;
import org.bimserver.shared.ChannelConnectionException;
import org.bimserver.shared.interfaces.AuthInterface;
import org.bimserver.shared.interfaces.NotificationRegistryInterface;
import org.bimserver.shared.interfaces.PublicInterface;
import org.bimserver.shared.interfaces.ServiceInterface;
import org.bimserver.shared.json.JsonReflector;
import org.bimserver.shared.meta.SMethod;
import org.bimserver.shared.meta.SService;
import org.bimserver.shared.meta.SServicesMap;
import org.bimserver.shared.reflector.KeyValuePair;
import org.bimserver.shared.reflector.Reflector;
import org.bimserver.shared.reflector.ReflectorException;
import org.bimserver.shared.reflector.ReflectorFactory;
import org.seamledger.source.ModelServerException.Reason;

/**
 * The client library's channel over our own HTTP. The library's has no limit of time, follows redirections, can't be interrupted, and
 * writes passwords to the log at its lowest level; and it makes classes at run time where the language's own proxies do.
 */
final class BimServerChannel {

  private static final ObjectMapper JSON = new ObjectMapper();
  /** What the library knows of the server's interfaces and their types. */
  static final SServicesMap SERVICES = services();

  private final ServerAccess access;
  private final Wire wire;
  private final JsonChannel channel;
  private String token = "";

  BimServerChannel(ServerAccess access) {
    this.access = access;
    this.wire = new Wire(access);
    this.channel = new JsonChannel(null, proxies(), (address, holder) -> new Transport(), access.url() + "/json", SERVICES);
    try {
      channel.connect(null);
    } catch (ChannelConnectionException e) {
      throw new IllegalStateException(e);
    }
  }

  private static SServicesMap services() {
    SServicesMap map = new SServicesMap();
    map.add(new SServiceInterfaceService(map, null, ServiceInterface.class));
    for (Class<? extends PublicInterface> other : List.of(AuthInterface.class, NotificationRegistryInterface.class)) {
      map.add(new SService(map, null, other));
    }
    map.initialize();
    return map;
  }

  Wire wire() {
    return wire;
  }

  /** What shows the server who asks; the empty string before the login. */
  String token() {
    return token;
  }

  void token(String given) {
    token = given;
  }

  /** A call of the library's interfaces. */
  @FunctionalInterface
  interface Call<I, R> {
    R on(I server) throws Exception;
  }

  <R> R auth(Call<AuthInterface, R> call) {
    return call(AuthInterface.class, call);
  }

  <R> R service(Call<ServiceInterface, R> call) {
    return call(ServiceInterface.class, call);
  }

  <R> R registry(Call<NotificationRegistryInterface, R> call) {
    return call(NotificationRegistryInterface.class, call);
  }

  /**
   * What the call makes of the answer, never null. The library wraps whatever goes wrong in exceptions of its own; what this program said
   * about it is inside.
   */
  private <I extends PublicInterface, R> R call(Class<I> type, Call<I, R> call) {
    try {
      return Objects.requireNonNull(call.on(channel.get(type)));
    } catch (Exception e) {
      for (Throwable t = e; t != null; t = t.getCause()) {
        if (t instanceof ModelServerException || t instanceof CancellationException) {
          throw (RuntimeException) t;
        }
        if (t instanceof Error error) {
          // A fault of this program, such as a missing class, which the server is not to be blamed for.
          throw error;
        }
        if (t instanceof BimServerFault fault) {
          throw fault.toPeople(access);
        }
      }
      // Without the cause: its message can quote the answer, and the answer to a login is a secret.
      throw new ModelServerException(Reason.UNUSABLE, access + " gave an answer that this program does not understand ("
          + e.getClass().getSimpleName() + ")");
    }
  }

  /** Sends the library's questions. */
  private final class Transport extends JsonReflector {

    Transport() {
      super(SERVICES);
    }

    @Override
    public JsonNode call(ObjectNode request) throws ReflectorException {
      if (!token.isEmpty()) {
        request.put("token", token);
      }
      JsonNode answer = parse(wire.ask("/json", request.toString().getBytes(StandardCharsets.UTF_8)));
      JsonNode response = answer.path("response");
      if (!response.isObject()) {
        throw new ModelServerException(Reason.UNUSABLE, access + " answered with JSON that is no BIMserver's");
      }
      JsonNode fault = response.get("exception");
      if (fault != null) {
        throw new BimServerFault(fault.path("__type").asText(), fault.path("message").asText("it does not say why"));
      }
      return answer;
    }

    private JsonNode parse(byte[] answer) {
      try {
        return JSON.readTree(answer);
      } catch (JacksonException e) {
        String what = new String(answer, 0, Math.min(answer.length, 64), StandardCharsets.UTF_8).strip().startsWith("<")
            ? "a web page" : "something that is not JSON";
        throw new ModelServerException(Reason.UNUSABLE,
            access + " answered with " + what + "; is its address right, and no proxy between?");
      } catch (IOException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  private static ReflectorFactory proxies() {
    return new ReflectorFactory() {
      @Override
      public <T extends PublicInterface> T createReflector(Class<T> type, Reflector transport) {
        return type.cast(Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] {type}, new Caller(type.getSimpleName(), transport)));
      }

      @Override
      public <T extends PublicInterface, K extends PublicInterface> Reflector createReflector(Class<K> type, T object) {
        throw new UnsupportedOperationException("this side only asks");
      }
    };
  }

  /** Turns a method's call into a question with named parameters. */
  private record Caller(String service, Reflector transport) implements InvocationHandler {

    @Override
    public Object invoke(Object proxy, Method method, Object[] values) throws Throwable {
      SMethod described = SERVICES.getBySimpleName(service).getSMethod(method.getName());
      KeyValuePair[] named = new KeyValuePair[values == null ? 0 : values.length];
      for (int i = 0; i < named.length; i++) {
        named[i] = new KeyValuePair(described.getParameter(i).getName(), values[i]);
      }
      return transport.callMethod(service, method.getName(), method.getReturnType(), named);
    }
  }
}
