package gapwise.reference.testing;

import java.util.List;

/**
 * A paper that does not exist, as a database may have it.
 *
 * @param number which paper it is; copies have the number of their paper
 * @param kind word of RIS for its kind
 * @param families family names
 * @param givens given names or initials
 * @param place journal
 * @param numbers volume, issue, first page, last page; empty where a copy lacks them
 */
public record InventedPaper(
    int number,
    String kind,
    String title,
    List<String> families,
    List<String> givens,
    String place,
    int year,
    List<String> numbers,
    String doi,
    String pmid,
    String note) {

  public InventedPaper withTitle(String changed) {
    return new InventedPaper(
        number, kind, changed, families, givens, place, year, numbers, doi, pmid, note);
  }

  public InventedPaper withPeople(List<String> otherFamilies, List<String> otherGivens) {
    return new InventedPaper(
        number, kind, title, otherFamilies, otherGivens, place, year, numbers, doi, pmid, note);
  }

  public InventedPaper withPlace(String changed, int changedYear, List<String> changedNumbers) {
    return new InventedPaper(
        number,
        kind,
        title,
        families,
        givens,
        changed,
        changedYear,
        changedNumbers,
        doi,
        pmid,
        note);
  }

  public InventedPaper withIdentifiers(String changedDoi, String changedPmid) {
    return new InventedPaper(
        number, kind, title, families, givens, place, year, numbers, changedDoi, changedPmid, note);
  }

  public InventedPaper as(String changedKind, String changedNote) {
    return new InventedPaper(
        number, changedKind, title, families, givens, place, year, numbers, doi, pmid, changedNote);
  }
}
