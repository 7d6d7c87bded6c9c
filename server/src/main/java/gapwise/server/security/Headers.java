package gapwise.server.security;

import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiConsumer;

/**
 * The headers that every answer carries. Pages bring no inline script or style, so the content
 * security policy allows none; nothing is loaded from elsewhere. Nothing is kept by browsers or
 * between, since it may be evidence that is corrected tomorrow; assets say otherwise of themselves.
 */
public final class Headers {
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
          + " connect-src 'self'; font-src 'self'; form-action 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  private static final Map<String, String> ALL = all();

  private Headers() {}

  private static Map<String, String> all() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("Content-Security-Policy", POLICY);
    all.put("X-Content-Type-Options", "nosniff");
    all.put("X-Frame-Options", "DENY");
    all.put("Referrer-Policy", "same-origin");
    all.put("Cross-Origin-Opener-Policy", "same-origin");
    all.put("Cross-Origin-Resource-Policy", "same-origin");
    all.put("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
    all.put("Cache-Control", "no-store");
    return all;
  }

  /** Sets them on one answer of a route. */
  public static void on(Context context) {
    on(context::header);
  }

  /**
   * Sets them on any answer.
   *
   * @param header sets one by its name
   */
  public static void on(BiConsumer<String, String> header) {
    ALL.forEach(header);
  }
}
