package gapwise.search;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Finds arms in one state of the evidence base: the same request gets the same answer for ever.
 * Safe for use by many threads.
 */
public interface StudySearch {

  /** In which order arms come. */
  enum Order {
    RELEVANCE,
    YEAR_DESCENDING,
    YEAR_ASCENDING,
    DEFECT_ASCENDING,
    DEFECT_DESCENDING,
    PATIENTS_DESCENDING,
    TITLE
  }

  /**
   * Finds the arms that a request asks for, with counts beside every filter.
   *
   * @param offset number of arms to pass over, 0 or more
   * @param limit most arms to return, 0 or more
   */
  SearchAnswer search(SearchRequest request, Order order, int offset, int limit);

  /**
   * Every arm that a request asks for, in order of study and arm, in one pass.
   *
   * @throws java.io.UncheckedIOException as {@link #search}, when the index cannot be read
   */
  List<SearchAnswer.ArmHit> everyArm(SearchRequest request);

  /**
   * As {@link #everyArm}, and among them the arms of which it is not said whether they have the
   * missing length that the request asks for; all other filters hold for them too.
   *
   * @throws java.io.UncheckedIOException as {@link #search}, when the index cannot be read
   */
  List<SearchAnswer.ArmHit> everyArmOrNotSaid(SearchRequest request);

  /**
   * Hands every arm that a request asks for to a visitor, in one pass over the index and without
   * reading a record. The arms of a study come one after another; studies come in no promised
   * order.
   *
   * @return what {@link #search} answers, without hits
   * @throws java.io.UncheckedIOException as {@link #search}, when the index cannot be read
   */
  SearchAnswer eachArm(SearchRequest request, Consumer<IndexedArm> visitor);

  /** Number of arms that a request asks for, without counts beside filters. */
  int count(SearchRequest request);

  /**
   * Arms that stand apart from what a request by length finds, since they do not say whether they
   * have the missing length asked for; none where no length is asked for.
   *
   * @param answer to the same request, which knows whether all its words are looked for or any
   */
  LengthNotSaid lengthNotSaid(SearchRequest request, SearchAnswer answer);

  /**
   * Another spelling for the words of a request, where not all of them are found and the other
   * spelling finds something among what the filters leave.
   */
  Optional<String> didYouMean(SearchRequest request);

  /**
   * Says of free words that no arm has all of them, filters aside, in which case arms with any of
   * them answer a request; empty where some arm has all, or there are none.
   */
  Optional<LooseWords> looseWords(String text);

  /** Whether any study is invented. */
  boolean holdsInvented();

  /** The number of the last change that is in this state. */
  long change();
}
