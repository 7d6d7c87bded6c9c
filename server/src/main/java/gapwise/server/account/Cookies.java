package gapwise.server.account;

import gapwise.server.security.Reach;
import io.javalin.http.Context;
import java.util.Optional;

/**
 * The cookie of a session. No script reads it, no other site's form sends it, and it ends with the
 * browser. By HTTPS its name binds it to this very host ({@code __Host-}, RFC 6265bis 4.1.3.2).
 */
final class Cookies {
  private static final String PLAIN = "gapwise-session";
  private static final String BY_HTTPS = "__Host-gapwise-session";

  private final Reach reach;

  Cookies(Reach reach) {
    this.reach = reach;
  }

  private String name(Context context) {
    return reach.isSecure(context) ? BY_HTTPS : PLAIN;
  }

  /** The secret that a browser sends. */
  Optional<String> secret(Context context) {
    return Optional.ofNullable(context.cookie(name(context))).filter(text -> !text.isBlank());
  }

  /** Gives a browser a secret. */
  void give(Context context, String secret) {
    set(context, secret, "");
  }

  /** Takes it back. */
  void take(Context context) {
    set(context, "", "; Max-Age=0");
  }

  private void set(Context context, String value, String more) {
    String secure = reach.isSecure(context) ? "; Secure" : "";
    context
        .res()
        .addHeader(
            "Set-Cookie",
            name(context) + "=" + value + "; Path=/; HttpOnly; SameSite=Lax" + secure + more);
  }
}
