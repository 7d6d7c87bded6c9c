package gapwise.server.route;

import gapwise.server.account.Right;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;

/** Adds addresses to the web server itself, each with its right. */
public record ServerRoutes(RoutesConfig routes) implements Routes {
  @Override
  public void get(String path, Right right, Handler handler) {
    routes.get(path, handler, right);
  }

  @Override
  public void post(String path, Right right, Handler handler) {
    routes.post(path, handler, right);
  }
}
