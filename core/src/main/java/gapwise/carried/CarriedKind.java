package gapwise.carried;

import gapwise.cohort.CohortDecision;
import gapwise.cohort.DecisionJson;
import gapwise.curation.EvidenceBase;
import gapwise.curation.ExtractionBase;
import gapwise.curation.KeptQuestionBase;
import gapwise.curation.ReferenceBase;
import gapwise.curation.ReviewBase;
import gapwise.curation.ScreeningBase;
import gapwise.extraction.Extraction;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.SameRow;
import gapwise.extraction.TwiceRead;
import gapwise.reference.kept.KeptJson;
import gapwise.reference.kept.KeptLoad;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.KeptSearch;
import gapwise.reference.kept.ReferenceDecision;
import gapwise.review.kept.KeptQuestion;
import gapwise.screening.Protocol;
import gapwise.screening.Ruling;
import gapwise.screening.Vote;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/** A kind of documents that is carried from one evidence base into another beside its studies. */
enum CarriedKind {
  REFERENCE(
      ReferenceBase.REFERENCE, json -> Read.of(KeptJson.read(json, KeptReference.class).id())),
  LOAD(ReferenceBase.LOAD, json -> Read.of(KeptJson.read(json, KeptLoad.class).file().load())),
  SEARCH(ReferenceBase.SEARCH, json -> Read.of(KeptJson.read(json, KeptSearch.class).key())),
  PAIR(ReferenceBase.DECISION, CarriedKind::pair),
  SHARED_PATIENTS(EvidenceBase.COHORT, CarriedKind::sharedPatients),
  PROTOCOL(ScreeningBase.PROTOCOL, CarriedKind::protocol),
  VOTE(ScreeningBase.VOTE, CarriedKind::vote),
  RULING(ScreeningBase.RULING, CarriedKind::ruling),
  REVIEW(ReviewBase.REVIEW, CarriedKind::review),
  KEPT_QUESTION(KeptQuestionBase.QUESTION, CarriedKind::keptQuestion),
  READ_TWICE(ExtractionBase.PAPER, CarriedKind::readTwice),
  EXTRACTION(ExtractionBase.EXTRACTION, CarriedKind::extraction),
  FIELD_CHOICE(ExtractionBase.CHOICE, CarriedKind::fieldChoice),
  SAME_ROW(ExtractionBase.ROWS, CarriedKind::sameRow);

  private final String word;
  private final Function<String, Read> reading;

  /**
   * What is read of a document.
   *
   * @param key the key that belongs to its content
   * @param when the moment of a decision; empty for what is no decision
   */
  record Read(String key, Optional<Instant> when) {
    Read {
      Objects.requireNonNull(key, "key");
      Objects.requireNonNull(when, "when");
    }

    static Read of(String key) {
      return new Read(key, Optional.empty());
    }

    static Read of(String key, Instant when) {
      return new Read(key, Optional.of(when));
    }

    /** Whether it was decided before another; never where one is no decision. */
    boolean isBefore(Read other) {
      return when.isPresent() && other.when.isPresent() && when.get().isBefore(other.when.get());
    }
  }

  CarriedKind(String word, Function<String, Read> reading) {
    this.word = word;
    this.reading = reading;
  }

  /** The kind of the documents in the store. */
  String word() {
    return word;
  }

  /**
   * Reads the content of a document.
   *
   * @throws IllegalArgumentException if it is none of this kind
   */
  Read read(String json) {
    return reading.apply(json);
  }

  static Optional<CarriedKind> find(String word) {
    return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
  }

  private static Read pair(String json) {
    ReferenceDecision decision = KeptJson.read(json, ReferenceDecision.class);
    return Read.of(decision.key(), decision.when());
  }

  private static Read sharedPatients(String json) {
    CohortDecision decision = DecisionJson.read(json);
    return Read.of(decision.key(), decision.when());
  }

  private static Read protocol(String json) {
    KeptJson.read(json, Protocol.class);
    return Read.of(ScreeningBase.THE_PROTOCOL);
  }

  private static Read review(String json) {
    KeptJson.read(json, ReviewBase.Stored.class);
    return Read.of(ReviewBase.THE_REVIEW);
  }

  /** Of two answers to one question the one from the later state of the evidence counts. */
  private static Read keptQuestion(String json) {
    KeptQuestion question = KeptJson.read(json, KeptQuestion.class);
    return new Read(question.id(), question.digest().state().when());
  }

  private static Read vote(String json) {
    Vote vote = KeptJson.read(json, Vote.class);
    return Read.of(vote.key(), vote.when());
  }

  /** Later is what is further; the moment is that of its last step. */
  private static Read readTwice(String json) {
    TwiceRead paper = KeptJson.read(json, TwiceRead.class);
    Instant last =
        paper
            .finished()
            .map(TwiceRead.Finished::when)
            .or(() -> paper.settling().map(TwiceRead.Settling::when))
            .orElse(paper.opened().when());
    return Read.of(paper.study(), last);
  }

  private static Read extraction(String json) {
    Extraction extraction = KeptJson.read(json, Extraction.class);
    return Read.of(extraction.key(), extraction.when());
  }

  private static Read fieldChoice(String json) {
    FieldChoice choice = KeptJson.read(json, FieldChoice.class);
    return Read.of(choice.key(), choice.when());
  }

  private static Read sameRow(String json) {
    SameRow rows = KeptJson.read(json, SameRow.class);
    return Read.of(rows.key(), rows.when());
  }

  private static Read ruling(String json) {
    Ruling ruling = KeptJson.read(json, Ruling.class);
    return Read.of(ruling.key(), ruling.when());
  }
}
