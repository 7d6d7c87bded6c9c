package gapwise.server.page.figure;

import java.util.List;

/** What the points make, before any of it is taken. */
public sealed interface MadeView {
  /** Nobody has asked yet. */
  record NotAsked() implements MadeView {}

  /**
   * Something is to be set first.
   *
   * @param sentences what was found and what to do
   */
  record Wrong(List<String> sentences) implements MadeView {
    public Wrong {
      sentences = List.copyOf(sentences);
    }
  }

  /**
   * A curve, rebuilt.
   *
   * @param outline the rebuilt curve over the picture, as a drawing writes corners
   * @param sentences how far it is from what was read and what is printed
   * @param rows how many rows of the draft it makes
   * @param mark what was looked at
   */
  record Curve(String outline, List<String> sentences, int rows, String mark) implements MadeView {
    public Curve {
      sentences = List.copyOf(sentences);
    }
  }

  /**
   * Patients.
   *
   * @param across what runs along x
   * @param up what runs along y
   * @param lines one for each point
   * @param mark what was looked at
   */
  record Scatter(String across, String up, List<Line> lines, String mark) implements MadeView {
    public Scatter {
      lines = List.copyOf(lines);
    }
  }

  /** One patient: its name and the numbers on both axes. */
  record Line(String name, String across, String up) {}
}
