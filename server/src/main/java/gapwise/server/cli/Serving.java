package gapwise.server.cli;

import gapwise.server.home.Home;
import gapwise.server.security.SameOrigin;
import gapwise.server.web.WebServer;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Option;

/** Serves an open home until the program is stopped. */
final class Serving {
  @Option(
      names = "--host",
      description =
          "Address to listen on. Default: ${DEFAULT-VALUE}, this machine alone. There is no sign-in"
              + " yet: whoever reaches another address can read and add.")
  String host = "127.0.0.1";

  @Option(
      names = "--port",
      description = "Port to listen on; 0 takes a free one. Default: ${DEFAULT-VALUE}")
  int port = 7070;

  /** Serves until the program is told to stop, then closes what is open. */
  void serve(Home home) {
    WebServer server = WebServer.start(home, host, port, Version.NUMBER);
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  server.close();
                  home.close();
                  stopped.countDown();
                },
                "stop"));
    if (!SameOrigin.isLoopback(host)) {
      System.err.println(
          "Listening on " + host + ": anyone who reaches it can read and add studies.");
    }
    System.err.println("Gapwise is at http://" + shown() + ":" + server.port() + "/");
    System.err.println("Stop it with Ctrl+C.");
    if (SameOrigin.isLoopback(host) || host.equals("0.0.0.0")) {
      new WarmUp(home, "http://127.0.0.1:" + server.port()).start();
    }
    try {
      stopped.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private String shown() {
    return host.equals("127.0.0.1") || host.equals("0.0.0.0") ? "localhost" : host;
  }
}
