package gapwise.decision.sheet;

import gapwise.evidence.vocabulary.Method;
import gapwise.figure.array.StageStrip;
import java.util.List;
import java.util.Objects;

/**
 * One method on the page for the patient.
 *
 * @param method which
 * @param plain what it is, in plain words
 * @param shares one for each head of the page, in its order
 * @param frame months in a frame in a sentence
 * @param walking months until full weight in a sentence
 * @param strip both on the axis that all methods share
 * @param stripWords the strip for those who cannot see it
 */
public record PatientRow(
    Method method,
    PlainMethod plain,
    List<ShareCell> shares,
    String frame,
    String walking,
    StageStrip strip,
    String stripWords) {
  public PatientRow {
    Objects.requireNonNull(method, "method");
    Objects.requireNonNull(plain, "plain");
    shares = List.copyOf(shares);
    Objects.requireNonNull(frame, "frame");
    Objects.requireNonNull(walking, "walking");
    Objects.requireNonNull(strip, "strip");
    Objects.requireNonNull(stripWords, "stripWords");
  }
}
