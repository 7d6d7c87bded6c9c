package gapwise.server.page.reference;

import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/** What the pages of kept references show. */
public sealed interface KeptView {
  /** The frame of the page. */
  Site site();

  /**
   * A list.
   *
   * @param query what was typed
   * @param found how many there are, in words
   * @param lines those of this page
   * @param paging where this page lies
   */
  record Listed(Site site, String query, String found, List<Line> lines, Paged paging)
      implements KeptView {
    public Listed {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A reference in a list.
   *
   * @param copies what is said of other records of its paper; empty where it has none
   * @param told what became of the paper, in a word each
   */
  record Line(
      String href,
      String title,
      String authors,
      String year,
      String journal,
      String copies,
      List<String> told) {
    public Line {
      told = List.copyOf(told);
    }
  }

  /**
   * One reference.
   *
   * @param id its id
   * @param text what it says
   * @param told what became of its paper, with who says so
   * @param sources the records of files that it was read from
   * @param group other records of the same paper
   * @param studies studies of the same paper
   * @param settled what was settled of it and another, with the other
   */
  record One(
      Site site,
      String id,
      Text text,
      List<String> told,
      List<String> sources,
      List<PairsView.Side> group,
      List<PairsView.Side> studies,
      List<SettledWith> settled)
      implements KeptView {
    public One {
      told = List.copyOf(told);
      sources = List.copyOf(sources);
      group = List.copyOf(group);
      studies = List.copyOf(studies);
      settled = List.copyOf(settled);
    }
  }

  /**
   * What a reference says.
   *
   * @param lead whether it leads its group
   */
  record Text(
      String title,
      String authors,
      String place,
      String numbers,
      Optional<String> summary,
      List<String> keywords,
      boolean lead) {
    public Text {
      keywords = List.copyOf(keywords);
    }
  }

  /** A pair that was settled: the other one, what was settled, and what stands for the two. */
  record SettledWith(PairsView.Side other, String words, String value) {}
}
