package gapwise.figure.page;

import gapwise.figure.Figure;
import gapwise.figure.drawing.Gap;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Paragraph;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Stack;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.file.FigureMetadata;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * A figure that is one field between its words. Upright: title and sentences above, key, cautions
 * and source below. On a landscape page sentences and cautions stand beside the field.
 *
 * @param sentences what the figure says
 * @param content the field and its key
 */
public record FieldPage(Figure figure, List<String> sentences, Style style, Content content) {
  /**
   * Shares of a landscape page that the field and its key may take; the words take the rest. Many
   * words get a wider column before letters get smaller.
   */
  private static final double[] FIELD_SHARES = {0.7, 0.63, 0.58, 0.53};

  /** How much larger letters are tried on a page that few words would leave empty. */
  private static final double[] LARGER = {1.4, 1.3, 1.2, 1.1};

  /** On a page of fixed height the field takes what is left, up to this many times its height. */
  private static final double TALLER = 1.8;

  /** Step by which a page that the words overfill grows until all stands on it. */
  private static final double STEP = 1.04;

  /** What differs between figures. */
  public interface Content {
    /** The plot for a height of its field. */
    PagePart plot(Style style, double fieldHeight);

    /** What stands right under the plot. */
    List<PagePart> key(Style style);

    /** The largest share of a landscape page that it may take, beside few words. */
    default double widest() {
      return FIELD_SHARES[0];
    }

    /** Height of the field where there is room. */
    double wished(Style style);

    /** Height of the field below which nothing can be read. */
    double least(Style style);
  }

  /** A drawing planned: parts stacked from the top in one column, or in two. */
  private record Plan(
      Style style,
      List<PagePart> strip,
      List<PagePart> title,
      List<PagePart> main,
      List<PagePart> beside,
      List<PagePart> foot,
      double height) {}

  /** Draws it. A page of fixed shape that the words overfill grows in both directions. */
  public Picture draw() {
    Style fitting = style;
    if (!style.sheet().landscape()) {
      return drawn(plan(filling(), 1));
    }
    while (true) {
      for (double share : shares()) {
        Plan plan = plan(fitting, share);
        if (plan.height() <= fitting.sheet().pageHeight().orElseThrow()) {
          return drawn(plan);
        }
      }
      fitting = fitting.onSheetLargerBy(STEP);
    }
  }

  private double[] shares() {
    return DoubleStream.concat(DoubleStream.of(content.widest()), DoubleStream.of(FIELD_SHARES))
        .distinct()
        .toArray();
  }

  /** On a page of fixed height the largest letters that leave the field its height. */
  private Style filling() {
    if (style.sheet().fixedHeight().isPresent()) {
      for (double factor : LARGER) {
        Style larger = style.largerBy(factor);
        if (free(larger, words(upright(larger))) >= content.wished(larger)) {
          return larger;
        }
      }
    }
    return style;
  }

  private Plan plan(Style on, double share) {
    return on.sheet().landscape() ? landscape(on, share) : withField(upright(on));
  }

  private List<PagePart> title(Style on) {
    return List.of(line(on, 0, figure.title(), Lettering.bold(on.type().title()), 0));
  }

  /** All but the field. */
  private Plan upright(Style on) {
    if (on.sheet().withinPage()) {
      return new Plan(on, List.of(), List.of(), List.of(), List.of(), content.key(on), 0);
    }
    List<PagePart> head = new ArrayList<>(title(on));
    head.addAll(told(on, 0));
    List<PagePart> foot = new ArrayList<>(content.key(on));
    foot.addAll(cautions(on, 0));
    foot.add(source(on));
    return new Plan(on, Strip.of(figure.provenance(), on), head, List.of(), List.of(), foot, 0);
  }

  private Plan withField(Plan words) {
    Style on = words.style();
    List<PagePart> main = List.of(content.plot(on, field(on, words(words))));
    double height = words(words) + Stack.height(main);
    return new Plan(on, words.strip(), words.title(), main, List.of(), words.foot(), height);
  }

  private static double words(Plan plan) {
    return Stack.height(plan.strip())
        + Stack.height(plan.title())
        + Stack.height(plan.foot())
        + Stack.margins(plan.style().sheet().margin());
  }

  private Plan landscape(Style on, double share) {
    List<PagePart> strip = Strip.of(figure.provenance(), on);
    List<PagePart> title = title(on);
    Style narrow = on.across(on.sheet().width() * share);
    List<PagePart> foot = List.of(source(on));
    List<PagePart> key = content.key(narrow);
    double around =
        Stack.height(strip)
            + Stack.height(title)
            + Stack.height(foot)
            + Stack.margins(on.sheet().margin());
    List<PagePart> main = new ArrayList<>();
    main.add(content.plot(narrow, field(narrow, around + Stack.height(key))));
    main.addAll(key);
    List<PagePart> beside = new ArrayList<>();
    beside.addAll(told(on, narrow.sheet().width()));
    beside.addAll(cautions(on, narrow.sheet().width()));
    double tallest = Math.max(Stack.height(main), Stack.height(beside));
    return new Plan(on, strip, title, main, beside, foot, around + tallest);
  }

  private double field(Style on, double words) {
    boolean fixed = on.sheet().fixedHeight().isPresent();
    double most = content.wished(on) * (fixed ? TALLER : 1);
    return Math.max(content.least(on), Math.min(most, free(on, words)));
  }

  /** Height left for the field beside the words and what stands round the field. */
  private double free(Style on, double words) {
    return on.sheet().pageHeight().orElse(Double.POSITIVE_INFINITY)
        - words
        - content.plot(on, 0).height();
  }

  private Picture drawn(Plan plan) {
    Style.Sheet sheet = plan.style().sheet();
    double height = Math.max(sheet.fixedHeight().orElse(0), plan.height());
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), "img", figure.title());
    svg.element("desc", figure.description());
    if (!sheet.withinPage()) {
      FigureMetadata.write(svg, figure);
    }
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    double y = Stack.draw(svg, plan.strip(), 0);
    y = Stack.draw(svg, plan.title(), y + sheet.margin() * 0.7);
    double below = Stack.draw(svg, plan.main(), y);
    Stack.draw(svg, plan.beside(), y);
    double foot =
        sheet.landscape() ? height - sheet.margin() * 0.8 - Stack.height(plan.foot()) : below;
    Stack.draw(svg, plan.foot(), foot);
    return new Picture(svg.end(), sheet.width(), height);
  }

  private List<PagePart> told(Style on, double from) {
    Lettering sentence = Lettering.plain(on.type().sentence()).in(Ink.SOFT);
    double before = on.type().sentence() * 0.35;
    return sentences.stream().map(each -> line(on, from, each, sentence, before)).toList();
  }

  private List<PagePart> cautions(Style on, double from) {
    List<PagePart> cautions = new ArrayList<>();
    cautions.add(new Gap(on.type().foot() * 0.7));
    double x = Math.max(from, on.sheet().margin());
    for (String each : figure.cautions()) {
      cautions.add(Paragraph.caution(each, x, on.sheet().right() - x, on.caution()));
    }
    return cautions;
  }

  private PagePart source(Style on) {
    String phrases = String.join(" \u00b7 ", figure.source());
    return line(on, 0, phrases, on.source(), on.type().foot() * 0.6);
  }

  private static PagePart line(
      Style on, double from, String text, Lettering letters, double before) {
    double x = Math.max(from, on.sheet().margin());
    return Paragraph.of(text, x, on.sheet().right() - x, letters, before);
  }
}
