package gapwise.server.cli;

import gapwise.server.account.NoAccountsException;
import gapwise.server.home.Home;
import gapwise.server.security.Reach;
import gapwise.server.security.SameOrigin;
import gapwise.server.web.WebServer;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Option;

/** Serves an open home until the program is stopped. */
final class Serving {
  @Option(
      names = "--host",
      description =
          "Address to listen on. Default: ${DEFAULT-VALUE}, this machine alone. Any other is"
              + " refused while there are no accounts; make the first by: gapwise people add NAME"
              + " --role administrator")
  String host = "127.0.0.1";

  @Option(
      names = "--port",
      description = "Port to listen on; 0 takes a free one. Default: ${DEFAULT-VALUE}")
  int port = 7070;

  @Option(
      names = "--behind-proxy",
      description =
          "Another server on this machine stands before this one and ends TLS. Its headers"
              + " X-Forwarded-Proto and X-Forwarded-For are believed, and the name that it is asked"
              + " by. It must hand the header Host on as it is. Refused while there are no"
              + " accounts.")
  boolean behindProxy;

  /** Serves until the program is told to stop, then closes what is open. */
  void serve(Home home) {
    Reach reach = new Reach(host, behindProxy);
    WebServer server = start(home, reach);
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
    if (!reach.isThisMachineAlone()) {
      System.err.println("Others reach this server, and everybody signs in.");
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

  /** Where it cannot be begun, the home is let go of. */
  private WebServer start(Home home, Reach reach) {
    try {
      return WebServer.start(home, reach, port, Version.NUMBER);
    } catch (NoAccountsException unguarded) {
      home.close();
      throw unguarded;
    }
  }

  private String shown() {
    return host.equals("127.0.0.1") || host.equals("0.0.0.0") ? "localhost" : host;
  }
}
