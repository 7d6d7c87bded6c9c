package gapwise.answer;

import gapwise.evidence.AuthorName;
import gapwise.evidence.Citation;
import gapwise.evidence.Study;
import gapwise.figure.Reference;
import gapwise.selection.SelectedRow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The references of the studies that a figure shows. */
public final class Cited {
  private Cited() {}

  /** One reference for each study of the rows, in the order of the rows. */
  public static List<Reference> of(List<SelectedRow> rows) {
    Map<String, Reference> references = new LinkedHashMap<>();
    rows.forEach(row -> references.computeIfAbsent(row.study().id(), id -> of(row.study())));
    return List.copyOf(references.values());
  }

  /** The reference of a study. */
  public static Reference of(Study study) {
    Citation citation = study.citation();
    return new Reference(
        study.id(),
        citation.line(),
        citation.title(),
        citation.people().stream().map(Cited::author).toList(),
        citation.year(),
        citation.journal().orElse(""),
        citation.volume().orElse(""),
        citation.issue().orElse(""),
        citation.pages().orElse(""),
        citation.doi().orElse(""),
        citation.pmid().orElse(""),
        study.invented());
  }

  private static Reference.Author author(AuthorName name) {
    return name instanceof AuthorName.Person person
        ? new Reference.Author(person.family(), person.given(), person.suffix())
        : new Reference.Author(name.line(), "", "", true);
  }
}
