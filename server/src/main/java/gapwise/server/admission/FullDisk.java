package gapwise.server.admission;

import java.util.List;
import java.util.Locale;

/** Whether a failure comes of a disk without room, which its owner can mend. */
public final class FullDisk {
  /** What a person is told. */
  public static final String WORDS =
      "The disk of this server is full, so nothing was taken in and nothing was changed. Whoever"
          + " runs the server must make room; then try again.";

  /** Seconds after which it is worth asking again; a person makes room. */
  public static final int SECONDS = 60;

  /** How the systems that we run on, and the store, say it. */
  private static final List<String> SIGNS =
      List.of(
          "no space left on device",
          "disk quota exceeded",
          "not enough space on the disk",
          "database or disk is full");

  private FullDisk() {}

  /** Whether the failure, or what caused it, says that there is no room. */
  public static boolean causes(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      String said = String.valueOf(cause.getMessage()).toLowerCase(Locale.ROOT);
      if (SIGNS.stream().anyMatch(said::contains)) {
        return true;
      }
    }
    return false;
  }
}
