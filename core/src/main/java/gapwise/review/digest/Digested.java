package gapwise.review.digest;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.MethodLine;
import gapwise.answer.People;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.review.kept.Digest;
import gapwise.review.kept.DigestNumber;
import gapwise.review.kept.DigestStudy;
import gapwise.review.kept.EvidenceState;
import gapwise.selection.SelectedRow;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * An answer in short, whatever state it is from.
 *
 * @param rows the rows that stand under it
 * @param numbers what it says
 */
public record Digested(List<SelectedRow> rows, List<DigestNumber> numbers) {
  /** As many bytes tell 100,000 records apart beyond doubt. */
  private static final int BYTES = 12;

  public Digested {
    rows = List.copyOf(rows);
    numbers = DigestNumber.named(numbers);
  }

  /** The same as it is kept. */
  public Digest at(EvidenceState state) {
    Map<String, DigestStudy> studies = new TreeMap<>();
    for (SelectedRow row : rows) {
      studies.computeIfAbsent(row.study().id(), id -> study(row));
    }
    return new Digest(state, List.copyOf(studies.values()), numbers);
  }

  private static DigestStudy study(SelectedRow row) {
    return new DigestStudy(
        row.study().id(), row.studyName(), row.studyVersion(), content(row.study()));
  }

  /** What a record holds, as a checksum. */
  public static String content(Study study) {
    try {
      byte[] whole =
          MessageDigest.getInstance("SHA-256")
              .digest(EvidenceJson.write(study).getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(whole, 0, BYTES);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** How many series, studies and people stand under it; none where no row does. */
  static List<DigestNumber> together(List<SelectedRow> rows) {
    return rows.isEmpty()
        ? List.of()
        : List.of(
            new DigestNumber(
                say("review.all-series"), "", People.of(rows), People.series(rows).words()));
  }

  /** What a line of a table says, under a name. */
  static DigestNumber number(String name, MethodLine line, Quantity measure, String certainty) {
    List<String> rests = new ArrayList<>(List.of(line.series(), certainty));
    rests.removeIf(String::isEmpty);
    return new DigestNumber(name, value(line, measure), line.counted(), String.join("; ", rests));
  }

  private static String value(MethodLine line, Quantity measure) {
    if (line.finding() instanceof MethodLine.Average average) {
      return Shown.estimate(measure, average.value());
    }
    return line.finding() instanceof MethodLine.OneSeries one
        ? Shown.estimate(measure, one.value())
        : say("decision.no-average");
  }
}
