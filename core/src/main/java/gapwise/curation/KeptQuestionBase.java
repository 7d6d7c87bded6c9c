package gapwise.curation;

import gapwise.reference.kept.KeptJson;
import gapwise.review.kept.KeptQuestion;
import gapwise.review.kept.KeptVersion;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Keeps questions with their answers, each with all its versions. Safe for use by many threads. */
public final class KeptQuestionBase {
  /** Kind of the documents that hold kept questions; their key is the id. */
  public static final String QUESTION = "kept-question";

  /** Most questions that are kept at once: more stand in no list that is read. */
  public static final int MOST = 500;

  private final DocumentStore store;

  public KeptQuestionBase(DocumentStore store) {
    this.store = Objects.requireNonNull(store, "store");
  }

  /**
   * Keeps a question, or another answer to it, if nobody did so since it was read.
   *
   * @param seen the version that was read, 0 for a new one
   * @return whether it was kept
   */
  public boolean keep(KeptQuestion question, String who, String why, int seen) {
    Write write = Write.put(QUESTION, question.id(), KeptJson.write(question)).expecting(seen);
    return store.write(List.of(write), who, why).written().isPresent();
  }

  /**
   * Keeps a question no longer; its history stays.
   *
   * @param seen the version that was read
   * @return whether it was done
   */
  public boolean drop(String id, String who, String why, int seen) {
    Write write = Write.delete(QUESTION, id).expecting(seen);
    return store.write(List.of(write), who, why).written().isPresent();
  }

  /** A kept question. */
  public Optional<KeptVersion> find(String id) {
    return store
        .latest(QUESTION, id)
        .filter(document -> !document.damaged())
        .map(KeptQuestionBase::version);
  }

  /** All kept questions, the last taken first. */
  public List<KeptVersion> all() {
    List<KeptVersion> all = new ArrayList<>();
    store.forEachLatest(
        QUESTION,
        document -> {
          if (!document.damaged()) {
            all.add(version(document));
          }
        });
    all.sort(Comparator.comparing(KeptVersion::when).reversed());
    return List.copyOf(all);
  }

  /** All versions of a kept question that can be read, the first one first. */
  public List<KeptVersion> history(String id) {
    return store.history(QUESTION, id).stream()
        .filter(document -> !document.damaged() && !document.isDeletion())
        .map(KeptQuestionBase::version)
        .toList();
  }

  private static KeptVersion version(DocumentVersion document) {
    return new KeptVersion(
        KeptJson.read(document.json().orElseThrow(), KeptQuestion.class),
        document.version(),
        document.when(),
        document.who(),
        document.why());
  }
}
