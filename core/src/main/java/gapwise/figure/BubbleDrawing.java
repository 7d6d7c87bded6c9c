package gapwise.figure;

/** Draws bubble plots, one drawing each: the same value gives the same bytes on every machine. */
public final class BubbleDrawing {
  private BubbleDrawing() {}

  /** Draws the figure. A page of fixed height that the words overfill grows instead. */
  public static Picture draw(Bubble bubble, Medium medium) {
    Style style = medium.style(0);
    return new FieldPage(
            bubble.title(),
            bubble.description(),
            bubble.sentences(),
            bubble.cautions(),
            bubble.provenance(),
            style,
            BubbleKey.of(bubble, style),
            height -> new BubblePlot(bubble, style, height))
        .draw();
  }
}
