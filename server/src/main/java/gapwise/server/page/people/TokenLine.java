package gapwise.server.page.people;

import gapwise.server.account.Token;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/**
 * A token as a page lists it.
 *
 * @param id by which it is ended
 * @param ends the day of its end, in universal time
 * @param used when it was last used, or that it never was
 * @param over whether it has ended
 */
public record TokenLine(
    String id, String label, String owner, String role, String ends, String used, boolean over) {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  static TokenLine of(Token token, Instant now) {
    return new TokenLine(
        token.id(),
        token.label(),
        token.owner(),
        token.role().word(),
        DAY.format(token.ends()),
        token.used().map(DAY::format).orElse("never"),
        !now.isBefore(token.ends()));
  }
}
