package gapwise.answer;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Where the page of a study lies, whatever letters its id has. Browsers and servers read meaning
 * into some of them ("..", "/", "%2e", ";"), written as they are or with a percent sign; here each
 * letter other than a-z, A-Z, 0-9, "-", "_" and "." becomes a tilde with the two hexadecimal digits
 * of each of its bytes in UTF-8, and so does the dot of an id of dots alone. An id of usual letters
 * stands as it is.
 */
public final class StudyAddress {
  private static final String PATH = "/studies/";
  private static final String FOR_THEMSELVES = "-_.";
  private static final Pattern DOTS = Pattern.compile("\\.+");
  private static final Pattern BYTES = Pattern.compile("(?:~[0-9A-Fa-f]{2})+");
  private static final int HEXADECIMAL = 16;

  private StudyAddress() {}

  /** The path of a study's page. */
  public static String of(String studyId) {
    StringBuilder path = new StringBuilder(PATH);
    boolean dots = DOTS.matcher(studyId).matches();
    for (byte each : studyId.getBytes(StandardCharsets.UTF_8)) {
      if (!dots && standsForItself(each)) {
        path.append((char) each);
      } else {
        path.append(String.format(Locale.ROOT, "~%02X", each));
      }
    }
    return path.toString();
  }

  private static boolean standsForItself(byte each) {
    return (each >= 'a' && each <= 'z')
        || (each >= 'A' && each <= 'Z')
        || (each >= '0' && each <= '9')
        || FOR_THEMSELVES.indexOf(each) >= 0;
  }

  /**
   * The id that the last part of a path stands for.
   *
   * @param part without a percent sign any more
   */
  public static String id(String part) {
    return BYTES
        .matcher(part)
        .replaceAll(bytes -> java.util.regex.Matcher.quoteReplacement(text(bytes.group())));
  }

  private static String text(String bytes) {
    ByteArrayOutputStream taken = new ByteArrayOutputStream();
    for (int at = 1; at < bytes.length(); at += 3) {
      taken.write(Integer.parseInt(bytes.substring(at, at + 2), HEXADECIMAL));
    }
    return taken.toString(StandardCharsets.UTF_8);
  }
}
