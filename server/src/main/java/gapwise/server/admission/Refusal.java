package gapwise.server.admission;

import java.util.Locale;
import org.eclipse.jetty.http.HttpStatus;

/**
 * Why a body is not taken.
 *
 * @param status HTTP status
 * @param words what is wrong and what to do
 * @param retryAfterSeconds when it is worth sending again; 0 where it is not
 * @param readsOn whether what still comes is read, so that the sender gets to read the answer
 */
record Refusal(int status, String words, int retryAfterSeconds, boolean readsOn) {
  static Refusal tooLarge(long mostBytes) {
    return new Refusal(
        HttpStatus.PAYLOAD_TOO_LARGE_413,
        String.format(
            Locale.ROOT,
            "What was sent is larger than this server takes here (%d MB).",
            mostBytes >> 20),
        0,
        true);
  }

  static Refusal tooSlow() {
    return new Refusal(
        HttpStatus.REQUEST_TIMEOUT_408,
        "What was sent came too slowly, so the connection was ended and nothing was taken. Try"
            + " again on a better line.",
        0,
        false);
  }

  static Refusal busy(BusyException busy) {
    return later(busy.words(), busy.seconds());
  }

  static Refusal diskFull() {
    return later(FullDisk.WORDS, FullDisk.SECONDS);
  }

  static Refusal unkept() {
    return later(
        "What was sent could not be kept on the disk of this server, so nothing was taken. The log"
            + " of the server says more.",
        FullDisk.SECONDS);
  }

  private static Refusal later(String words, int seconds) {
    return new Refusal(HttpStatus.SERVICE_UNAVAILABLE_503, words, seconds, true);
  }
}
