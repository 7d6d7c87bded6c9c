package gapwise.server.home;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.budget.Memory;
import gapwise.course.Courses;
import gapwise.curation.KeptStudy;
import gapwise.curation.StudiesAt;
import gapwise.evidence.Study;
import gapwise.search.MemoryIndex;
import gapwise.search.SearchSnapshot;
import gapwise.search.StudySearch;
import gapwise.selection.Selector;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * One state of the evidence base with all that is asked of it: search, studies, selections, answers
 * and the number printed in every figure belong to the same change, and so does what is remembered
 * of them. It never changes; a later state is another value. Safe for use by many threads.
 */
public final class Evidence {
  /** An earlier state has its whole index in memory. */
  private static final int MOST_EARLIER = 2;

  private final SearchSnapshot snapshot;
  private final StudySearch search;
  private final StudiesAt studies;
  private final Selector selector;
  private final RememberedOverlaps overlaps;
  private final Answers answers;
  private final Courses courses;
  private final RememberedClaims claims;
  private final RememberedOptions options;
  private final Remembered<Long, Evidence> earlier = new Remembered<>(MOST_EARLIER, this::at);
  private final RememberedAverages averages;
  private final Optional<LocalDate> date;

  /**
   * @param snapshot the search in this state
   * @param studies the studies of the same state
   */
  Evidence(SearchSnapshot snapshot, StudiesAt studies) {
    this.snapshot = snapshot;
    this.search = new RememberedSearches(snapshot);
    this.studies = studies;
    this.overlaps = new RememberedOverlaps(studies);
    this.selector = new Selector(search, studies, overlaps.links());
    Memory memory = new RowMemory();
    this.answers = new Answers(selector::select, memory);
    this.courses = new Courses(selector, answers::select, memory);
    this.claims = new RememberedClaims(answers);
    this.options = new RememberedOptions(search, answers, studies);
    this.averages = new RememberedAverages(answers, options);
    this.date = studies.changedAt().map(when -> LocalDate.ofInstant(when, ZoneOffset.UTC));
  }

  SearchSnapshot snapshot() {
    return snapshot;
  }

  /** Number of the last change that is in this state. */
  public long change() {
    return studies.change();
  }

  /** When it stood so, for people: its day, and the number that finds it again. */
  String inWords() {
    return date.map(
            day -> say("page.change-of", Map.of("date", day.toString(), "change", number())))
        .orElseGet(() -> say("page.change", Map.of("change", number())));
  }

  private String number() {
    return Long.toString(change());
  }

  /** The search. */
  public StudySearch search() {
    return search;
  }

  /** The studies with their histories. */
  public StudiesAt studies() {
    return studies;
  }

  /** A study as it stood. */
  public Optional<Study> study(String id) {
    return studies.study(id).map(KeptStudy::study);
  }

  /** Those of the studies named that there were, by id. */
  public Map<String, Study> studies(Set<String> ids) {
    Map<String, Study> found = new HashMap<>();
    studies.studies(ids).forEach((id, kept) -> found.put(id, kept.study()));
    return found;
  }

  /** Whether any study here is invented, which every page must say. */
  public boolean hasInvented() {
    return snapshot.holdsInvented();
  }

  /** Rows that answer a question, read anew. */
  public Selector selector() {
    return selector;
  }

  /** Answers about an event over time, from published curves. */
  public Courses courses() {
    return courses;
  }

  /** Studies that may tell of the same patients, and what was settled of them. */
  public RememberedOverlaps overlaps() {
    return overlaps;
  }

  /** Answers to questions, and the runner of plans. */
  public Answers answers() {
    return answers;
  }

  /** Claims, examined. */
  public RememberedClaims claims() {
    return claims;
  }

  /** Methods side by side. */
  public RememberedOptions options() {
    return options;
  }

  /** What the posteriors behind those say of each average. */
  public RememberedAverages averages() {
    return averages;
  }

  /** Whether an earlier state is made already. */
  public boolean hasEarlier(long change) {
    return earlier.has(change);
  }

  /**
   * An earlier state, whose index is made anew in memory: about 15 seconds for 100,000 groups.
   *
   * @param change number of a change, 0 to that of this state
   */
  public Evidence earlier(long change) {
    return earlier.of(change);
  }

  private Evidence at(long change) {
    StudiesAt then = studies.before(change);
    return new Evidence(
        MemoryIndex.of(each -> then.forEachSound(kept -> each.accept(kept.study())), change), then);
  }

  /**
   * The state that figures are made from.
   *
   * @param program version of the program
   */
  public Edition edition(String program) {
    return new Edition(program, OptionalLong.of(change()), date);
  }
}
