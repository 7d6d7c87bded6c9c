package gapwise.server.home;

import gapwise.curation.ScreeningBase;
import gapwise.reference.kept.KeptLine;
import gapwise.reference.kept.ReferenceGroups;
import gapwise.reference.kept.Shelf;
import gapwise.screening.Board;
import gapwise.screening.Ruling;
import gapwise.screening.Vote;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The screening of the kept references as it stands now. What was chosen is read once and then
 * followed change by change; the board is put together anew only when something changed. Safe for
 * use by many threads.
 */
public final class Screening {
  private final ScreeningBase base;
  private final References references;
  private final Map<String, Vote> votes = new HashMap<>();
  private final Map<String, Ruling> rulings = new HashMap<>();
  private Optional<Long> seen = Optional.empty();
  private Optional<Shown> shown = Optional.empty();

  /**
   * One state of it.
   *
   * @param shelf the references
   * @param board what was chosen of them
   */
  public record Shown(Shelf shelf, Board board) {}

  Screening(ScreeningBase base, References references) {
    this.base = base;
    this.references = references;
  }

  /** Where choices are kept. */
  public ScreeningBase base() {
    return base;
  }

  /** How it stands. */
  public synchronized Shown shown() {
    boolean changed = refresh();
    Shelf shelf = references.shelf();
    if (changed || shown.filter(one -> one.shelf() == shelf).isEmpty()) {
      shown = Optional.of(new Shown(shelf, board(shelf)));
    }
    return shown.orElseThrow();
  }

  private Board board(Shelf shelf) {
    ReferenceGroups groups = shelf.groups();
    List<String> papers =
        shelf.lines().stream()
            .map(KeptLine::id)
            .filter(id -> groups.leading(id).equals(id))
            .toList();
    return new Board(papers, groups::leading, votes.values(), rulings.values());
  }

  private boolean refresh() {
    long last = base.lastChange();
    if (seen.filter(change -> change >= last).isPresent()) {
      return false;
    }
    if (seen.isEmpty()) {
      base.votes().forEach(vote -> votes.put(vote.key(), vote));
      base.rulings().forEach(ruling -> rulings.put(ruling.key(), ruling));
      seen = Optional.of(last);
      return true;
    }
    Taking taking = new Taking();
    seen = Optional.of(base.changesAfter(seen.get(), taking));
    return taking.changed;
  }

  private final class Taking implements ScreeningBase.Changes {
    private boolean changed;

    @Override
    public void vote(Vote vote) {
      votes.put(vote.key(), vote);
      changed = true;
    }

    @Override
    public void ruling(Ruling ruling) {
      rulings.put(ruling.key(), ruling);
      changed = true;
    }
  }
}
