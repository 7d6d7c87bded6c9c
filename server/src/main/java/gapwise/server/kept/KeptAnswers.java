package gapwise.server.kept;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.LengthAnswer;
import gapwise.answer.SizeBands;
import gapwise.course.Courses;
import gapwise.curation.KeptQuestionBase;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.sheet.Sheet;
import gapwise.evidence.vocabulary.Method;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.review.digest.ClaimDigest;
import gapwise.review.digest.CourseDigest;
import gapwise.review.digest.Digested;
import gapwise.review.digest.PooledDigest;
import gapwise.review.digest.TableDigest;
import gapwise.review.kept.Digest;
import gapwise.review.kept.EvidenceState;
import gapwise.review.kept.KeptQuestion;
import gapwise.review.kept.Moved;
import gapwise.selection.Question;
import gapwise.server.address.Address;
import gapwise.server.address.ClaimAddress;
import gapwise.server.address.CourseAddress;
import gapwise.server.address.LengthAddress;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.QuestionAddress;
import gapwise.server.address.SheetAddress;
import gapwise.server.home.Evidence;
import gapwise.server.home.Pieces;
import gapwise.server.home.Remembered;
import java.util.List;

/**
 * Answers of kept questions in one state of the evidence base, each worked out once; whoever makes
 * one for another state starts with none. Safe for use by many threads.
 */
public final class KeptAnswers {
  private final Evidence evidence;
  private final Edition edition;
  private final EvidenceState state;
  private final Remembered<Asked, Digest> digests;

  /**
   * What is asked.
   *
   * @param place the page
   * @param address its question alone
   */
  public record Asked(KeptPlace place, Address address) {
    /** What a kept question asks. */
    public static Asked of(KeptQuestion question) {
      KeptPlace place =
          KeptPlace.find(question.page())
              .orElseThrow(() -> wrong("page", "'" + question.page() + "' answers no question"));
      try {
        return new Asked(place, KeptPlace.question(Address.parse(question.query())));
      } catch (IllegalArgumentException unreadable) {
        throw wrong("query", "its address is not written as addresses are");
      }
    }
  }

  /**
   * @param program version of the program
   */
  public KeptAnswers(Evidence evidence, String program) {
    this.evidence = evidence;
    this.edition = evidence.edition(program);
    this.state = new EvidenceState(evidence.change(), evidence.studies().changedAt(), program);
    this.digests = new Remembered<>(KeptQuestionBase.MOST, asked -> digested(asked).at(state));
  }

  /** The state. */
  public EvidenceState state() {
    return state;
  }

  /** What an answer stands on, so that a page works it out piece by piece. */
  public Pieces pieces(Asked asked) {
    Pieces pieces = new Pieces();
    if (asked.place() == KeptPlace.COMPARE || asked.place() == KeptPlace.SHEET) {
      OptionQuestion question = options(asked);
      pieces.and(
          () -> digests.has(asked) || evidence.options().hasTable(question),
          () -> evidence.options().table(question));
    }
    return pieces.and(() -> digests.has(asked), () -> digests.of(asked));
  }

  /**
   * Whether it is known without any work how a kept question stands: it was taken in this state, or
   * was asked in it before.
   */
  public boolean isKnown(KeptQuestion question) {
    return question.digest().state().equals(state) || digests.has(Asked.of(question));
  }

  /** What an answer says. */
  public Digest digest(Asked asked) {
    return digests.of(asked);
  }

  /**
   * What moved since a question was kept; nothing where it was kept in this state.
   *
   * @throws WrongInputException where it can no longer be asked
   */
  public Moved moved(KeptQuestion question) {
    Digest kept = question.digest();
    return Moved.between(kept, kept.state().equals(state) ? kept : digests.of(Asked.of(question)));
  }

  private static WrongInputException wrong(String where, String message) {
    return new WrongInputException(List.of(new Problem(where, "not-to-be-kept", message)));
  }

  private static OptionQuestion options(Asked asked) {
    return asked.place() == KeptPlace.SHEET
        ? new SheetAddress(asked.address()).question()
        : OptionAddress.question(asked.address());
  }

  private static Question question(Asked asked) {
    return QuestionAddress.question(asked.address())
        .orElseThrow(() -> wrong("outcome", "no outcome is named"));
  }

  private Digested digested(Asked asked) {
    Answers answers = evidence.answers();
    Address address = asked.address();
    return switch (asked.place()) {
      case POOLED -> PooledDigest.of(answers.ask(question(asked), QuestionAddress.split(address)));
      case BY_SIZE -> bySize(answers, asked);
      case OVER_TIME -> course(asked);
      case COMPARE -> TableDigest.of(evidence.options().table(options(asked)), method -> true);
      case SHEET -> {
        OptionQuestion question = options(asked);
        List<Method> methods = Sheet.methods(question);
        yield TableDigest.of(evidence.options().table(question), methods::contains);
      }
      case CLAIM ->
          ClaimDigest.of(
              evidence
                  .claims()
                  .verdict(
                      ClaimAddress.claim(address)
                          .orElseThrow(() -> wrong("a", "a part of the claim is missing"))),
              answers);
    };
  }

  private Digested bySize(Answers answers, Asked asked) {
    LengthAnswer told = answers.byLength(question(asked), LengthAddress.shape(asked.address()));
    Question onClock = told.answer().selection().fixed(told.answer().question());
    return PooledDigest.of(
        told, SizeBands.of(answers, onClock, LengthAddress.cuts(asked.address())), edition);
  }

  private Digested course(Asked asked) {
    Question question = question(asked);
    if (!Courses.isTime(question.outcome())) {
      throw wrong("outcome", "'" + question.outcome().code() + "' is no time to an event");
    }
    return CourseDigest.of(
        evidence.courses().ask(question, CourseAddress.horizon(asked.address())));
  }
}
