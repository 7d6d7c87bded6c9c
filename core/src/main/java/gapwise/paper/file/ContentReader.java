package gapwise.paper.file;

import gapwise.paper.Box;
import gapwise.paper.DrawnPath;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Guard;
import gapwise.paper.Refused;
import gapwise.paper.Word.Turn;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.apache.pdfbox.pdmodel.font.encoding.GlyphList;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.pdmodel.graphics.state.PDGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;

/** Goes through the drawing of a page once and notes letters, lines and pictures. */
final class ContentReader extends PDFGraphicsStreamEngine {
  /** A line of letters may lean so much, in parts of its length, and still count as straight. */
  private static final double LEAN = 0.05;

  private final DisplaySpace space;
  private final Guard guard;
  private final List<Letter> letters = new ArrayList<>();
  private final List<Box> images = new ArrayList<>();
  private final PathNotes notes;
  private int unseen;
  private boolean troubled;

  ContentReader(PDPage page, DisplaySpace space, Guard guard) {
    super(page);
    this.space = space;
    this.guard = guard;
    this.notes = new PathNotes(guard);
  }

  List<Letter> letters() {
    return letters;
  }

  List<DrawnPath> paths() {
    return notes.paths();
  }

  List<Box> images() {
    return images;
  }

  /** Letters that are there to be searched, not to be seen. */
  int unseenLetters() {
    return unseen;
  }

  /** Whether some step could not be done. */
  boolean isTroubled() {
    return troubled;
  }

  @Override
  protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
    guard.step();
    super.processOperator(operator, operands);
  }

  @Override
  protected void operatorException(Operator operator, List<COSBase> operands, IOException exception)
      throws IOException {
    // One step that cannot be done, such as a missing typeface, does not spoil the page.
    troubled = true;
    guard.look();
  }

  @Override
  protected void showGlyph(Matrix matrix, PDFont font, int code, Vector displacement)
      throws IOException {
    guard.step();
    double advance = displacement.getX() != 0 ? displacement.getX() : displacement.getY();
    Point2D.Float start = matrix.transformPoint(0, 0);
    Point2D.Float end = matrix.transformPoint((float) advance, 0);
    Point2D.Float up = matrix.transformPoint(0, 1);
    Point from = space.at(start.x, start.y);
    Point to = space.at(end.x, end.y);
    Point top = space.at(up.x, up.y);
    double size = Math.hypot(top.x() - from.x(), top.y() - from.y());
    if (!Double.isFinite(from.x() + from.y() + to.x() + to.y() + size) || size < 0.5) {
      return;
    }
    boolean inside =
        from.x() > -1
            && from.y() > -1
            && from.x() < space.width() + 1
            && from.y() < space.height() + 1;
    Optional<Turn> turn = turn(from, to, top);
    if (inside && turn.isPresent()) {
      add(
          Letters.text(font.toUnicode(code, GlyphList.getAdobeGlyphList())),
          from,
          to,
          size,
          turn.get(),
          font);
    }
  }

  private void add(String text, Point from, Point to, double size, Turn turn, PDFont font) {
    if (letters.size() >= guard.caps().letters()) {
      throw new Guard.StoppedException(
          Refused.tooMuch("more than " + guard.caps().letters() + " letters"));
    }
    double left;
    double right;
    double baseline;
    switch (turn) {
      case DOWN -> {
        left = from.y();
        right = to.y();
        baseline = -from.x();
      }
      case UP -> {
        left = -from.y();
        right = -to.y();
        baseline = from.x();
      }
      case OVER -> {
        left = -from.x();
        right = -to.x();
        baseline = -from.y();
      }
      default -> {
        left = from.x();
        right = to.x();
        baseline = from.y();
      }
    }
    RenderingMode mode = getGraphicsState().getTextState().getRenderingMode();
    unseen += mode == RenderingMode.NEITHER ? 1 : 0;
    letters.add(
        new Letter(
            text,
            Math.min(left, right),
            Math.max(left, right),
            baseline,
            size,
            turn,
            isBold(font),
            colour(getGraphicsState().getNonStrokingColor())));
  }

  /** Which way letters run; a page's watermark runs aslant and is no part of its words. */
  private static Optional<Turn> turn(Point from, Point to, Point top) {
    double along = Math.hypot(to.x() - from.x(), to.y() - from.y());
    double x = to.x() - from.x();
    double y = to.y() - from.y();
    if (along < 1e-6) {
      // A letter without width, such as an accent: it runs across its own height.
      along = Math.hypot(top.x() - from.x(), top.y() - from.y());
      x = from.y() - top.y();
      y = top.x() - from.x();
    }
    if (Math.abs(y) <= LEAN * along) {
      return Optional.of(x >= 0 ? Turn.NONE : Turn.OVER);
    }
    return Math.abs(x) <= LEAN * along
        ? Optional.of(y >= 0 ? Turn.DOWN : Turn.UP)
        : Optional.empty();
  }

  private static boolean isBold(PDFont font) {
    PDFontDescriptor descriptor = font.getFontDescriptor();
    String name = String.valueOf(font.getName()).toLowerCase(Locale.ROOT);
    return name.contains("bold")
        || name.contains("black")
        || name.contains("heavy")
        || descriptor != null && (descriptor.isForceBold() || descriptor.getFontWeight() >= 600);
  }

  @Override
  public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
    notes.moveTo(at(p0));
    notes.lineTo(at(p1));
    notes.lineTo(at(p2));
    notes.lineTo(at(p3));
    notes.close();
  }

  @Override
  public void drawImage(PDImage image) {
    Matrix matrix = getGraphicsState().getCurrentTransformationMatrix();
    Point a = at(matrix.transformPoint(0, 0));
    Point b = at(matrix.transformPoint(1, 1));
    if (Double.isFinite(a.x() + a.y() + b.x() + b.y())) {
      images.add(Box.between(a.x(), a.y(), b.x(), b.y()));
    }
  }

  @Override
  public void clip(int windingRule) {
    // What is cut off at an edge is small in a paper, and a place outside the page is dropped.
  }

  @Override
  public void moveTo(float x, float y) {
    notes.moveTo(space.at(x, y));
  }

  @Override
  public void lineTo(float x, float y) {
    notes.lineTo(space.at(x, y));
  }

  @Override
  public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
    notes.bendTo(space.at(x3, y3));
  }

  @Override
  @SuppressWarnings("NullAway") // PDFBox asks by null whether a line was begun.
  public Point2D getCurrentPoint() {
    // Only asked whether there is one and, for short forms of bends, where it is.
    return notes.hasPoint() ? new Point2D.Float() : null;
  }

  @Override
  public void closePath() {
    notes.close();
  }

  @Override
  public void endPath() {
    notes.forget();
  }

  @Override
  public void strokePath() throws IOException {
    PDGraphicsState state = getGraphicsState();
    double scale = Math.abs(state.getCurrentTransformationMatrix().getScalingFactorX());
    List<Double> dashes = new ArrayList<>();
    if (state.getLineDashPattern() != null) {
      for (float length : state.getLineDashPattern().getDashArray()) {
        dashes.add((double) length);
      }
    }
    notes.keep(false, colour(state.getStrokingColor()), state.getLineWidth() * scale, dashes);
  }

  @Override
  public void fillPath(int windingRule) throws IOException {
    notes.keep(true, colour(getGraphicsState().getNonStrokingColor()), 0, List.of());
  }

  @Override
  public void fillAndStrokePath(int windingRule) throws IOException {
    fillPath(windingRule);
  }

  @Override
  public void shadingFill(COSName shading) {
    // A shade holds no line that could be a curve or a rule.
  }

  private Point at(Point2D point) {
    return space.at(point.getX(), point.getY());
  }

  private static int colour(PDColor colour) {
    try {
      return colour.toRGB();
    } catch (IOException | RuntimeException pattern) {
      return 0;
    }
  }
}
