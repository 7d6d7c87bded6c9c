package gapwise.server.page.reference;

import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/** What the page of pairs shows. */
public sealed interface PairsView {
  /** The frame of the page. */
  Site site();

  /** The references are being compared. */
  record Underway(Site site, int references) implements PairsView {}

  /**
   * Pairs to settle.
   *
   * @param count all that are open
   * @param pairs those of this page
   * @param paging where this page lies
   * @param contradictions pairs that were held apart, while other decisions make them one paper
   */
  record Asked(
      Site site, int count, List<Pair> pairs, Paged paging, List<Contradiction> contradictions)
      implements PairsView {
    public Asked {
      pairs = List.copyOf(pairs);
      contradictions = List.copyOf(contradictions);
    }
  }

  /** A pair held apart against other decisions, with the words of who settled it. */
  record Contradiction(Side one, Side other, String by) {}

  /**
   * Two records side by side.
   *
   * @param key one name for the two, in letters that an id of an element may have
   * @param proposed what is proposed
   * @param reasons why
   * @param before what was settled before one of them changed; empty where nothing was
   * @param value what stands for the pair in a form, behind the word that settles it
   */
  record Pair(
      String key,
      String proposed,
      List<String> reasons,
      Optional<String> before,
      Side one,
      Side other,
      String value) {
    public Pair {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * One of two.
   *
   * @param name its title
   * @param href where it is shown
   * @param authors its authors
   * @param place where and when it was published
   * @param numbers its numbers
   * @param from where it comes from
   * @param summary its abstract; empty where it has none
   */
  record Side(
      String name,
      String href,
      String authors,
      String place,
      String numbers,
      String from,
      String summary) {}

  /** A pair that was settled just now, with what was settled, in words. */
  record Settled(Pair pair, String words) {}
}
