package gapwise.server.page.reference;

import gapwise.curation.ReferenceBase;
import gapwise.curation.ReferenceBase.StampedLoad;
import gapwise.reference.format.SearchDone;
import gapwise.reference.kept.KeptLoad;
import gapwise.reference.kept.KeptSearch;
import gapwise.reference.kept.OpenPair;
import gapwise.reference.kept.Shelf;
import gapwise.server.home.References;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;

/**
 * What is kept, at a glance.
 *
 * @param references how many references
 * @param papers how many papers they are
 * @param open how many pairs are open; empty while they are being compared
 * @param loads the loads, the last one first
 * @param searches the log of searches
 */
public record KeptOverview(
    int references,
    int papers,
    Optional<Integer> open,
    List<Load> loads,
    List<SearchDone> searches) {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  public KeptOverview {
    loads = List.copyOf(loads);
    searches = List.copyOf(searches);
  }

  /** A load with who accepted it when. */
  public record Load(KeptLoad load, String when, String who) {}

  static KeptOverview of(References references, ReferenceBase base) {
    Shelf shelf = references.shelf();
    return new KeptOverview(
        shelf.lines().size(),
        shelf.papers(),
        references.open().map(List<OpenPair>::size),
        base.loads().stream().map(KeptOverview::load).toList(),
        base.searches().stream().map(KeptSearch::search).toList());
  }

  private static Load load(StampedLoad one) {
    return new Load(one.load(), DAY.format(one.stamp().when()), one.stamp().who());
  }
}
