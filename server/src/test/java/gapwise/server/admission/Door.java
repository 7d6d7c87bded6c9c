package gapwise.server.admission;

import io.javalin.Javalin;
import io.javalin.config.RoutesConfig;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** A real server on a free port whose routes a test makes itself, behind an admission. */
final class Door implements AutoCloseable {
  /** Longer than any test needs, so that one that hangs ends. */
  private static final int PATIENCE_MILLIS = 30_000;

  /** Few, so that a crowd need not be large to hold them all. */
  static final int THREADS = 20;

  private final Admission admission;
  private final Javalin javalin;

  Door(Bounds bounds, Path folder, Consumer<RoutesConfig> routes) {
    admission = new Admission(bounds, folder, Door::refuse);
    javalin =
        Javalin.create(
                config -> {
                  config.startup.showJavalinBanner = false;
                  config.jetty.threadPool = new QueuedThreadPool(THREADS, 4);
                  config.http.maxRequestSize = Admission.LARGEST_BODY_BYTES;
                  admission.addTo(config, "127.0.0.1", 0);
                  config.routes.exception(
                      BusyException.class,
                      (busy, context) ->
                          context
                              .status(HttpStatus.SERVICE_UNAVAILABLE)
                              .header("Retry-After", String.valueOf(busy.seconds()))
                              .result(String.valueOf(busy.getMessage())));
                  routes.accept(config.routes);
                })
            .start();
  }

  private static void refuse(
      Request request, Response response, int status, String words, int seconds, Callback done) {
    response.setStatus(status);
    byte[] body = words.getBytes(StandardCharsets.UTF_8);
    response.getHeaders().put(HttpHeader.CONTENT_LENGTH, body.length);
    response.write(true, ByteBuffer.wrap(body), done);
  }

  /** A line to the server. */
  Socket line() throws IOException {
    Socket line = new Socket(InetAddress.getLoopbackAddress(), javalin.port());
    line.setSoTimeout(PATIENCE_MILLIS);
    line.setTcpNoDelay(true);
    return line;
  }

  static void send(Socket line, String text) throws IOException {
    OutputStream out = line.getOutputStream();
    out.write(text.getBytes(StandardCharsets.ISO_8859_1));
    out.flush();
  }

  /** All that is answered to one request whose connection is closed after it. */
  String answer(String request) throws IOException {
    try (Socket line = line()) {
      send(line, request);
      return rest(line);
    }
  }

  /** What comes until the other side closes. */
  static String rest(Socket line) throws IOException {
    return new String(line.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
  }

  static String get(String path) {
    return "GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n";
  }

  static String post(String path, String more, String body) {
    return "POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\n" + more + "\r\n" + body;
  }

  @Override
  public void close() {
    javalin.stop();
    admission.close();
  }
}
