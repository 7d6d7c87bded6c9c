package gapwise.server.route;

import gapwise.server.account.Right;
import io.javalin.http.Handler;

/**
 * Takes the addresses that are answered. There is no way to add one without the right that it asks
 * for.
 */
public interface Routes {
  /** Answers GET requests at a path, to whoever has a right. */
  void get(String path, Right right, Handler handler);

  /** Answers POST requests at a path, to whoever has a right. */
  void post(String path, Right right, Handler handler);
}
