package gapwise.server.security;

import io.javalin.http.Context;

/**
 * The headers that every answer carries. Pages bring no inline script or style, so the content
 * security policy allows none; nothing is loaded from elsewhere.
 */
public final class Headers {
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
          + " connect-src 'self'; font-src 'self'; form-action 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  private Headers() {}

  /** Sets them on one answer. */
  public static void on(Context context) {
    context
        .header("Content-Security-Policy", POLICY)
        .header("X-Content-Type-Options", "nosniff")
        .header("X-Frame-Options", "DENY")
        .header("Referrer-Policy", "same-origin")
        .header("Cross-Origin-Opener-Policy", "same-origin")
        .header("Cross-Origin-Resource-Policy", "same-origin")
        .header("Permissions-Policy", "camera=(), microphone=(), geolocation=()")
        .header("Cache-Control", "no-cache");
  }
}
