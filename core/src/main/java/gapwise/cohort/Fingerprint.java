package gapwise.cohort;

import gapwise.evidence.Authors;
import gapwise.evidence.Citation;
import gapwise.evidence.Study;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A hash of what proposals about a study stand on. It is written out value by value and not taken
 * from the values' own text, so that a later version of the program asks nobody again.
 */
final class Fingerprint {
  /** So many bytes tell any two records apart; more only make decisions longer. */
  private static final int BYTES = 12;

  private Fingerprint() {}

  static String of(Study study, List<GroupFacts> groups) {
    Citation print = study.citation();
    List<String> values = new ArrayList<>();
    values.add(print.title());
    values.addAll(print.otherSpellings());
    values.add(
        print.authors().map(Authors::text).orElse("") + "|" + print.firstAuthor().orElse(""));
    values.add(print.year() + "|" + print.journal().orElse("") + "|" + print.volume().orElse(""));
    values.add(print.pages().orElse("") + "|" + print.doi().orElse(""));
    values.add(print.pmid().orElse("") + "|" + print.register().orElse(""));
    values.add(study.reportKind().code() + "|" + study.centres() + "|" + study.country());
    values.add(study.recruitmentFrom() + "|" + study.recruitmentTo());
    values.add(study.cohort() + "|" + study.sameStudyAs() + "|" + study.overlapSuspectedWith());
    for (GroupFacts group : groups) {
      values.add(group.arm() + "|" + group.label() + "|" + group.method());
      values.add(new TreeSet<>(group.parts()) + "|" + new TreeSet<>(group.bones()));
      values.add(new TreeMap<>(group.numbers().counts()).toString());
      values.add(new TreeMap<>(group.numbers().amounts()).toString());
      group.prints().forEach(row -> values.add(row.key() + row.measured()));
    }
    return hash(String.join("\n", values));
  }

  /** The hash of a pair. */
  static String ofPair(StudyFacts one, StudyFacts two) {
    boolean inOrder = one.id().compareTo(two.id()) <= 0;
    return hash(inOrder ? one.stoodOn() + two.stoodOn() : two.stoodOn() + one.stoodOn());
  }

  private static String hash(String text) {
    try {
      byte[] all =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(all, 0, BYTES);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
