package gapwise.server.page.reference;

import gapwise.desk.Draft;
import gapwise.evidence.AuthorName;
import gapwise.evidence.Authors;
import gapwise.exchange.Template;
import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Published;
import gapwise.reference.Reference;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.likeness.Letters;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** A draft of a study with the citation of a kept reference. */
final class ReferenceDraft {
  /** Letters of a family name in an id. */
  private static final int LETTERS = 24;

  private ReferenceDraft() {}

  /**
   * A new draft.
   *
   * @param isUsed whether a study is or was called so
   */
  static Draft of(KeptReference kept, Predicate<String> isUsed) {
    Draft draft = Draft.of(free(name(kept), isUsed));
    int row = draft.rows(Template.STUDIES).get(0).number();
    for (Map.Entry<String, String> cell : cells(kept.reference()).entrySet()) {
      draft = draft.withCell(row, cell.getKey(), cell.getValue(), Optional.empty());
    }
    return draft;
  }

  private static Map<String, String> cells(Reference reference) {
    Map<String, String> cells = new LinkedHashMap<>();
    Published place = reference.published();
    Identifiers numbers = reference.identifiers();
    cells.put("title", reference.titles().main());
    reference.authors().stream()
        .findFirst()
        .ifPresent(first -> cells.put("first_author", family(first)));
    Authors.ofNames(reference.authors().stream().map(ReferenceDraft::name).toList())
        .ifPresent(all -> cells.put("authors", all.text()));
    place.year().ifPresent(year -> cells.put("year", Integer.toString(year)));
    put(cells, "journal", place.journal().or(() -> place.shortJournal()));
    put(cells, "volume", place.volume());
    put(cells, "issue", place.issue());
    put(cells, "pages", place.pages());
    put(cells, "doi", numbers.doi());
    put(cells, "pmid", numbers.pmid());
    put(cells, "register", numbers.trial());
    return cells;
  }

  private static void put(Map<String, String> cells, String column, Optional<String> text) {
    text.filter(one -> !one.isBlank()).ifPresent(one -> cells.put(column, one));
  }

  private static String family(Author author) {
    return author instanceof Author.Person person ? person.fullFamily() : author.line();
  }

  private static AuthorName name(Author author) {
    return author instanceof Author.Person person
        ? new AuthorName.Person(person.fullFamily(), person.given(), person.suffix())
        : new AuthorName.Literal(author.line());
  }

  /** First author and year, as studies are mostly called. */
  private static String name(KeptReference kept) {
    List<Author> authors = kept.reference().authors();
    String first = authors.isEmpty() ? "" : Letters.folded(family(authors.get(0)));
    String plain = first.replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
    String name = plain.isEmpty() ? "study" : plain.substring(0, Math.min(LETTERS, plain.length()));
    return kept.year().isPresent() ? name + "-" + kept.year().getAsInt() : name;
  }

  private static String free(String name, Predicate<String> isUsed) {
    String free = name;
    for (int number = 2; isUsed.test(free); number++) {
      free = name + "-" + number;
    }
    return free;
  }
}
