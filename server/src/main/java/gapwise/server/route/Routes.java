package gapwise.server.route;

import io.javalin.http.Handler;

/** Takes the addresses that pages and API answer. */
public interface Routes {
  /** Answers GET requests at a path. */
  void get(String path, Handler handler);

  /** Answers POST requests at a path. */
  void post(String path, Handler handler);
}
