package gapwise.server.supplement;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.LengthAnswer;
import gapwise.answer.LengthShape;
import gapwise.answer.QuestionWords;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.Figure;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import gapwise.server.address.Address;
import gapwise.server.address.LengthAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.home.Evidence;
import gapwise.server.report.FigurePdf;
import gapwise.supplement.Analysis;
import gapwise.supplement.Asking;
import gapwise.supplement.Sources;
import gapwise.supplement.SupplementWriter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** Supplements of one state of the evidence base. */
public final class Supplements {
  private final Evidence evidence;
  private final Edition edition;
  private final Supplier<? extends Optional<? extends Figure>> flow;

  /**
   * @param flow the flow of records through a screening; empty where there is none
   */
  public Supplements(
      Evidence evidence, Edition edition, Supplier<? extends Optional<? extends Figure>> flow) {
    this.evidence = evidence;
    this.edition = edition;
    this.flow = flow;
  }

  /** Writes one into a new folder or archive. */
  public SupplementWriter.Written write(Path target, SupplementWriter.Wish wish)
      throws IOException {
    Sources sources = new Sources(evidence.studies(), evidence.overlaps().decisions());
    return new SupplementWriter(sources, edition, FigurePdf::of).write(target, wish);
  }

  /**
   * What a page tells under an address.
   *
   * @param page its path, such as /pooled
   * @throws WrongInputException where the address asks nothing, or the page has no supplement
   */
  public SupplementWriter.Wish of(String page, Address address) {
    return switch (page) {
      case PagePaths.POOLED -> pooled(address);
      case PagePaths.BY_SIZE -> bySize(address);
      case PagePaths.FUNNEL -> funnel(address);
      case PagePaths.COMPARE -> new ComparedSupplement(evidence, edition).of(address, anyFlow());
      default ->
          throw wrong(
              "no-supplement-of-page",
              "There is no supplement of '"
                  + page
                  + "'. There is one of "
                  + String.join(
                      ", ",
                      List.of(
                          PagePaths.POOLED, PagePaths.BY_SIZE, PagePaths.FUNNEL, PagePaths.COMPARE))
                  + ".");
    };
  }

  private SupplementWriter.Wish pooled(Address address) {
    Question question = question(address);
    Answer answer = evidence.answers().ask(question, QuestionAddress.split(address));
    return one(question, Analysis.of(question.outcome().code(), Asking.POOLED, answer));
  }

  private SupplementWriter.Wish bySize(Address address) {
    Question question = question(address);
    LengthAnswer told = evidence.answers().byLength(question, LengthAddress.shape(address));
    return one(question, Analysis.of(question.outcome().code() + "-by-size", told));
  }

  private SupplementWriter.Wish funnel(Address address) {
    Question question = question(address);
    Answer answer = evidence.answers().funnel(question);
    String name = question.outcome().code() + "-small-against-large";
    return one(question, Analysis.of(name, Asking.SMALL_AGAINST_LARGE, answer));
  }

  private SupplementWriter.Wish one(Question question, Optional<Analysis> analysis) {
    return new SupplementWriter.Wish(
        QuestionWords.of(question), analysis.stream().toList(), List.of(), anyFlow(), List.of());
  }

  /** Every outcome that some group reports: pooled, and over the length where there is a line. */
  public SupplementWriter.Wish everything() {
    List<Analysis> analyses = new ArrayList<>();
    List<String> not = new ArrayList<>();
    Answers answers = evidence.answers();
    for (Outcome outcome : Outcome.vocabulary().all()) {
      Question question = Question.about(outcome, SearchRequest.EVERYTHING);
      Answer answer = answers.ask(question);
      boolean reported =
          !answer.selection().rows().isEmpty() || !answer.selection().leftOut().isEmpty();
      Optional<Analysis> pooled = Analysis.of(outcome.code(), Asking.POOLED, answer);
      if (pooled.isPresent() && answer.result().isPresent()) {
        analyses.add(pooled.get());
        line(question).ifPresent(analyses::add);
      } else if (reported) {
        not.add(say("supplement.not-pooled", Map.of("outcome", outcome.label())));
      }
    }
    return new SupplementWriter.Wish(
        say("supplement.of-everything"), analyses, not, anyFlow(), List.of());
  }

  private Optional<Analysis> line(Question question) {
    LengthAnswer told = evidence.answers().byLength(question, LengthShape.LINE);
    return told.drawn().isPresent() && told.answer().result().isPresent()
        ? Analysis.of(question.outcome().code() + "-by-size", told)
        : Optional.empty();
  }

  /** Plans that somebody wrote. */
  public SupplementWriter.Wish plans(List<Path> files) {
    List<Analysis> analyses =
        files.stream().map(file -> PlanAnalysis.of(file, evidence.answers())).toList();
    return new SupplementWriter.Wish(
        say("supplement.of-plans", Map.of("plans", analyses.size())),
        analyses,
        List.of(),
        anyFlow(),
        List.of());
  }

  private Optional<Figure> anyFlow() {
    return flow.get().map(figure -> (Figure) figure);
  }

  private static Question question(Address address) {
    return QuestionAddress.question(address)
        .orElseThrow(() -> wrong("missing-field", "Name one outcome, such as outcome=union."));
  }

  private static WrongInputException wrong(String code, String message) {
    return new WrongInputException(List.of(new Problem("question", code, message)));
  }
}
