package gapwise.review;

import gapwise.screening.Reader;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A person of the team.
 *
 * @param who by the name under which she screens
 * @param duties what she does, each once
 */
public record ReviewPerson(Reader who, List<Duty> duties) {
  public ReviewPerson {
    Objects.requireNonNull(who, "who");
    duties = duties.stream().distinct().sorted().toList();
  }

  /** "AB: screens, extracts". */
  public String words() {
    return duties.isEmpty()
        ? who.name()
        : who.name() + ": " + duties.stream().map(Duty::label).collect(Collectors.joining(", "));
  }
}
