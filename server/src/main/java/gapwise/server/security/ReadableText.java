package gapwise.server.security;

import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.nio.charset.Charset;
import java.util.Locale;
import java.util.Optional;

/** Refuses requests that say their text is written in a way that nobody here can read. */
public final class ReadableText {
  private static final String NAME = "charset";

  private ReadableText() {}

  /** Refuses a request whose character set is not known, saying which it names. */
  public static void check(Context context) {
    String type = Optional.ofNullable(context.req().getHeader("Content-Type")).orElse("");
    for (String parameter : type.split(";")) {
      String tidy = parameter.strip();
      if (tidy.toLowerCase(Locale.ROOT).startsWith(NAME) && !isKnown(tidy)) {
        throw new HttpResponseException(
            HttpStatus.UNSUPPORTED_MEDIA_TYPE.getCode(),
            "The header Content-Type says '"
                + tidy
                + "', which names no way of writing text that is known here. Send UTF-8.");
      }
    }
  }

  private static boolean isKnown(String parameter) {
    if (!parameter.toLowerCase(Locale.ROOT).startsWith(NAME + "=")) {
      return false;
    }
    String name = parameter.substring(NAME.length() + 1).strip();
    String bare =
        name.length() > 1 && name.startsWith("\"") && name.endsWith("\"")
            ? name.substring(1, name.length() - 1)
            : name;
    try {
      return Charset.isSupported(bare);
    } catch (IllegalArgumentException noName) {
      return false;
    }
  }
}
