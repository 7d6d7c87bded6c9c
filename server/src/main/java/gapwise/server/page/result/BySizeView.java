package gapwise.server.page.result;

import gapwise.answer.AnswerForest;
import gapwise.answer.Told;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.bubble.Bubble;
import gapwise.figure.bubble.BubbleTable;
import gapwise.problem.Problem;
import gapwise.selection.HowRead;
import gapwise.selection.Selection;
import gapwise.server.address.CarriedQuestion;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.Definitions;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.Offer;
import gapwise.server.page.part.OutcomeChoice;
import gapwise.server.page.part.QuestionParts;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TooShort;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.page.part.UnstatedClocks;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What the page of an outcome by size shows: a question asked, or the choice of one. */
public sealed interface BySizeView {
  /** The frame of the page. */
  Site site();

  /** Filters and outcomes to choose from. */
  FilterForm form();

  /** What narrows the result, each with the address without it. */
  default List<FilterForm.On> on() {
    return QuestionParts.all(PagePaths.BY_SIZE, form().address());
  }

  /** The outcomes of the family that is asked for, one of which is drawn at a time. */
  default List<OutcomeChoice> outcomes() {
    return OutcomeChoice.one(PagePaths.BY_SIZE, form());
  }

  /** The cuts between bands as the address gives them. */
  default String cuts() {
    return form().address().first("cuts");
  }

  /** Address of the groups with the same filters. */
  default String studies() {
    return CarriedQuestion.of(form().address()).at(PagePaths.STUDIES);
  }

  /** No outcome is named, so one must be chosen first. */
  record Unasked(Site site, FilterForm form) implements BySizeView {}

  /**
   * An outcome that was asked for, whose answer is not there yet.
   *
   * @param question the question in words
   * @param awaited what is worked out
   */
  record Working(Site site, FilterForm form, String question, Awaited awaited)
      implements BySizeView {}

  /**
   * An outcome that was asked for.
   *
   * @param question the question in words
   * @param figure the figure; empty where nothing can be drawn
   * @param shapes line or curve
   * @param notes why something asked for is not drawn
   * @param bands pooled results by band
   * @param selection the rows
   * @param plan the plan of the line as text; empty where there is nothing to analyse
   * @param definitions how the series define the outcome
   */
  record Asked(
      Site site,
      FilterForm form,
      String question,
      Optional<Drawn> figure,
      List<Shape> shapes,
      List<String> notes,
      List<Band> bands,
      Selection selection,
      Optional<String> plan,
      Definitions definitions)
      implements BySizeView {

    /** The notes that the figure does not say by itself. */
    public List<String> notesBeside() {
      List<String> said = figure.map(drawn -> drawn.bubble().sentences()).orElse(List.of());
      return notes.stream().filter(note -> !said.contains(note)).toList();
    }

    /** Groups that do not say from when they count, if there are any. */
    public Optional<UnstatedClocks> unstatedClocks() {
      return UnstatedClocks.of(PagePaths.BY_SIZE, form.address(), selection);
    }

    /** How the studies behind it were read. */
    public ReadStands stands() {
      return ReadStands.of(PagePaths.BY_SIZE, form.address(), HowRead.ofRows(selection.rows()));
    }

    /** The outcome. */
    public Outcome outcome() {
      return selection.question().outcome();
    }

    /** The same question with other numbers of the same series. */
    public List<Offer> offers() {
      return Offer.all(PagePaths.BY_SIZE, form.address(), selection);
    }

    /** Series followed too shortly for the outcome, if there are any. */
    public Optional<TooShort> tooShort() {
      return TooShort.of(PagePaths.BY_SIZE, form.address(), outcome(), selection);
    }

    /** What must be known of the series taken together. */
    public List<String> aboutSeries() {
      return selection.notes().stream().map(Problem::message).toList();
    }

    /** Address of a download. */
    public String download(String name) {
      return form.address().at("/api/v1/" + name);
    }

    /** Address of the pooled result of the same question. */
    public String pooled() {
      return form.address().without(List.of("shape", "cuts")).at(PagePaths.POOLED);
    }

    /** What stands beside the page. */
    public List<String> cautions() {
      return figure.map(drawn -> drawn.bubble().cautions()).orElse(AnswerForest.CAUTIONS);
    }

    /** Series that answer but give no middle length, so that they are not drawn. */
    public int without() {
      return selection.rows().size() - figure.map(Drawn::placed).orElse(0);
    }
  }

  /** A shape to choose, with the address that takes it. */
  record Shape(String label, String href, boolean chosen) {}

  /**
   * One band of size.
   *
   * @param label such as "2 to under 4"
   * @param told one entry a method; none where no series lies in the band
   * @param pooled address of its pooled result
   * @param partly says of which series only the patients in the band are counted; mostly empty
   */
  record Band(String label, List<Told> told, String pooled, List<String> partly) {}

  /** The figure, its numbers, and its files. */
  record Drawn(Bubble bubble, int placed, TwoWidths drawing, TakeFigure take) {
    /** Numbers in words. */
    public BubbleTable table() {
      return new BubbleTable(bubble);
    }

    /** What it shows in sentences after the first. */
    public List<String> furtherSentences() {
      return bubble.sentences().subList(1, bubble.sentences().size());
    }

    /** The curve at some ten lengths, for a table. */
    public List<Bubble.At> curve() {
      List<Bubble.At> all = bubble.curve();
      int step = Math.max(1, all.size() / 10);
      return Stream.iterate(0, i -> i < all.size(), i -> i + step).map(all::get).toList();
    }
  }
}
