package gapwise.server.web;

import io.javalin.Javalin;
import io.javalin.router.Endpoint;
import io.javalin.security.Roles;
import io.javalin.security.RouteRole;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The addresses that a web server answers, as it has them itself, whoever added them. */
final class RouteList {
  private RouteList() {}

  /** What each asks for, by method and path, such as "GET /studies/{id}". */
  static Map<String, Set<RouteRole>> rights(Javalin javalin) {
    return javalin.unsafe.internalRouter.allHttpHandlers().stream()
        .collect(
            Collectors.toMap(
                parsed -> parsed.endpoint.method.name() + " " + parsed.endpoint.path,
                parsed -> roles(parsed.endpoint),
                (one, same) -> one,
                TreeMap::new));
  }

  private static Set<RouteRole> roles(Endpoint endpoint) {
    return Optional.ofNullable(endpoint.metadata(Roles.class))
        .map(Roles::getRoles)
        .orElse(Set.of());
  }
}
