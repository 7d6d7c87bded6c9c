package gapwise.server.home;

import gapwise.curation.ExtractionBase;
import gapwise.extraction.Extraction;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.Reconciliation;
import gapwise.extraction.SameRow;
import gapwise.extraction.Side;
import gapwise.extraction.TeamAgreement;
import gapwise.extraction.TwiceRead;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The papers that two people extract apart, as they stand now. What was settled is read once and
 * then followed change by change. What one person extracted is given out only once both stand and
 * can change no more. Safe for use by many threads.
 */
public final class Extractions {
  private final ExtractionBase base;
  private final Map<String, ExtractionBase.Kept> papers = new TreeMap<>();
  private final Map<String, Map<String, Choice>> choices = new HashMap<>();
  private final Map<String, Map<String, SameRow>> rows = new HashMap<>();
  private Optional<Long> seen = Optional.empty();

  private record Choice(FieldChoice choice, int version) {}

  Extractions(ExtractionBase base) {
    this.base = base;
  }

  /** Where they are kept. */
  public ExtractionBase base() {
    return base;
  }

  /** All papers, by the name of their study. */
  public synchronized List<TwiceRead> papers() {
    refresh();
    return papers.values().stream().map(ExtractionBase.Kept::paper).toList();
  }

  /** The paper of a study as it is kept. */
  public synchronized Optional<ExtractionBase.Kept> find(String study) {
    refresh();
    return Optional.ofNullable(papers.get(study));
  }

  /**
   * Both extractions of a paper, what differs and what was settled of it; empty before the
   * reconciliation has begun.
   */
  public synchronized Optional<Reconciliation> reconciliation(String study) {
    refresh();
    Optional<TwiceRead> paper =
        Optional.ofNullable(papers.get(study))
            .map(ExtractionBase.Kept::paper)
            .filter(TwiceRead::isOpenToAll);
    Optional<Extraction> first = paper.flatMap(one -> base.extraction(one, Side.FIRST));
    Optional<Extraction> second = paper.flatMap(one -> base.extraction(one, Side.SECOND));
    if (first.isEmpty() || second.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Reconciliation.of(
            paper.orElseThrow(),
            first.get(),
            second.get(),
            choices.getOrDefault(study, Map.of()).values().stream().map(Choice::choice).toList(),
            rows.getOrDefault(study, Map.of()).values()));
  }

  /** Which version of what was settled stands, by the key of the difference. */
  public synchronized Map<String, Integer> versions(String study) {
    refresh();
    Map<String, Integer> versions = new HashMap<>();
    choices.getOrDefault(study, Map.of()).forEach((key, one) -> versions.put(key, one.version()));
    return versions;
  }

  /** How far people agree, field by field, over all papers whose extractions may be seen. */
  public TeamAgreement agreement() {
    TeamAgreement agreement = new TeamAgreement();
    for (TwiceRead paper : papers()) {
      reconciliation(paper.study()).ifPresent(one -> agreement.add(one.compared()));
    }
    return agreement;
  }

  private void refresh() {
    long last = base.lastChange();
    if (seen.isEmpty()) {
      base.forEach(new Taking());
      seen = Optional.of(last);
    } else if (seen.get() < last) {
      seen = Optional.of(Math.max(last, base.changesAfter(seen.get(), new Taking())));
    }
  }

  private final class Taking implements ExtractionBase.Changes {
    @Override
    public void paper(ExtractionBase.Kept paper) {
      papers.put(paper.paper().study(), paper);
    }

    @Override
    public void choice(FieldChoice choice, int version) {
      choices
          .computeIfAbsent(choice.study(), none -> new TreeMap<>())
          .put(choice.difference(), new Choice(choice, version));
    }

    @Override
    public void rows(SameRow said) {
      rows.computeIfAbsent(said.study(), none -> new TreeMap<>()).put(said.key(), said);
    }
  }
}
