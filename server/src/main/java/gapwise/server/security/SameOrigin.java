package gapwise.server.security;

import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import java.net.URI;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;

/**
 * Keeps foreign pages from writing through a person's browser. A browser names the page that a POST
 * comes from in {@code Origin} and {@code Sec-Fetch-Site}; both must be ours. A program that is no
 * browser sends neither and is let through here; it signs in by a token or not at all, where there
 * are accounts.
 *
 * <p>On loopback the {@code Host} must be a loopback name too, so that a foreign name which is made
 * to point here (DNS rebinding) reads nothing.
 */
public final class SameOrigin {
  private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");
  private static final String OTHER_METHOD = "X-HTTP-Method-Override";
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");

  private final Reach reach;
  private final boolean loopbackOnly;

  /**
   * @param reach from where the server can be reached
   */
  public SameOrigin(Reach reach) {
    this.reach = reach;
    this.loopbackOnly = reach.isThisMachineAlone();
  }

  /** Whether an address can be reached from this machine alone. */
  public static boolean isLoopback(String host) {
    return LOOPBACK.contains(host) || host.equals("::1");
  }

  /** Refuses a request that a foreign page made. */
  public void check(Context context) {
    String host = Optional.ofNullable(context.host()).orElse("");
    if (loopbackOnly && !LOOPBACK.contains(withoutPort(host))) {
      throw new ForbiddenResponse("This server answers only to the name of this machine.");
    }
    if (READING.contains(context.req().getMethod())) {
      return;
    }
    String site = context.header("Sec-Fetch-Site");
    boolean foreignSite = site != null && !site.equals("same-origin") && !site.equals("none");
    boolean foreignOrigin =
        Collections.list(context.req().getHeaders("Origin")).stream()
            .anyMatch(origin -> !isOurs(origin, host, context));
    if (foreignSite || foreignOrigin) {
      throw new ForbiddenResponse("This form was sent from another site, so nothing was done.");
    }
  }

  /**
   * Refuses a request that asks to be taken for one of another method: nothing here sends such, and
   * what may pass as reading must not become writing.
   */
  public static void refuseOtherMethod(Context context) {
    if (context.req().getHeader(OTHER_METHOD) != null) {
      throw new BadRequestResponse(
          "This server takes a request by its own method; leave out the header "
              + OTHER_METHOD
              + ".");
    }
  }

  /** Whether a request may change nothing. */
  public static boolean isReading(Context context) {
    return READING.contains(context.req().getMethod());
  }

  /**
   * Whether a request that passed {@link #check} says that a page of ours sent it. Every browser
   * says so of a form; what writes by a cookie must.
   */
  public static boolean isFromOurPage(Context context) {
    return context.header("Origin") != null
        || "same-origin".equals(context.header("Sec-Fetch-Site"));
  }

  /**
   * On loopback nobody stands before this server, so that its pages are never https; behind a
   * server that ends TLS those that came by it always are.
   */
  private boolean isOurs(String origin, String host, Context context) {
    boolean plain = origin.startsWith("http://");
    return host.equals(authority(origin))
        && !(loopbackOnly && !plain)
        && !(reach.isSecure(context) && plain);
  }

  private static String withoutPort(String host) {
    return host.replaceFirst(":\\d+$", "");
  }

  private static String authority(String origin) {
    try {
      return Optional.ofNullable(URI.create(origin).getAuthority()).orElse("");
    } catch (IllegalArgumentException notAnAddress) {
      return "";
    }
  }
}
