package gapwise.figure;

/** Draws funnel plots, one drawing each: the same value gives the same bytes on every machine. */
public final class FunnelDrawing {
  private FunnelDrawing() {}

  /** Draws the figure. A page of fixed height that the words overfill grows instead. */
  public static Picture draw(Funnel funnel, Medium medium) {
    Style style = medium.style(0);
    return new FieldPage(
            funnel.title(),
            funnel.description(),
            funnel.sentences(),
            funnel.cautions(),
            funnel.provenance(),
            style,
            FunnelKey.of(funnel, style),
            height -> new FunnelPlot(funnel, style, height))
        .draw();
  }
}
