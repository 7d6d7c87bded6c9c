package gapwise.untidy;

import gapwise.evidence.vocabulary.Outcome;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Something that a person may say a column holds: a field of the template, an outcome, or of whom
 * its rows tell.
 *
 * @param code as mappings name it
 * @param label for people
 * @param heading under which lists show it
 */
public record MappingTarget(String code, String label, String heading) {
  /** A column that a person leaves out, in contrast to one that is not understood. */
  public static final String LEFT_OUT = "left-out";

  private static final List<MappingTarget> ALL = read();

  public MappingTarget {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(heading, "heading");
  }

  /** All of them in the order in which lists show them, those of one heading together. */
  public static List<MappingTarget> all() {
    return ALL;
  }

  /** The target of a code; empty where there is none. */
  public static Optional<MappingTarget> find(String code) {
    return ALL.stream().filter(one -> one.code().equals(code)).findFirst();
  }

  private static List<MappingTarget> read() {
    List<MappingTarget> all = new ArrayList<>();
    String heading = "";
    for (String line : lines()) {
      if (line.startsWith("[")) {
        heading = line.substring(1, line.length() - 1);
      } else {
        int equals = line.indexOf(" = ");
        all.add(new MappingTarget(line.substring(0, equals), line.substring(equals + 3), heading));
      }
    }
    Outcome.vocabulary()
        .all()
        .forEach(
            one -> all.add(new MappingTarget("outcome:" + one.code(), one.label(), one.family())));
    return List.copyOf(all);
  }

  private static List<String> lines() {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    MappingTarget.class.getResourceAsStream("targets.txt"), "targets.txt"),
                StandardCharsets.UTF_8))) {
      return in.lines().filter(line -> !line.startsWith("#") && !line.isBlank()).toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException("targets.txt cannot be read", unreadable);
    }
  }
}
