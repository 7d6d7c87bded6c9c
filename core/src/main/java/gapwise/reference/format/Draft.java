package gapwise.reference.format;

import gapwise.problem.Problem;
import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Kind;
import gapwise.reference.Link;
import gapwise.reference.OtherField;
import gapwise.reference.Reference;
import gapwise.reference.Titles;
import gapwise.reference.likeness.PageSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A reference while the fields of a record are read into it, with what is doubtful about them. The
 * first value of a field that can have one is taken; another is kept and told. Not thread-safe.
 */
final class Draft {
  /** Four digits that can be a year of print; an earlier one is no paper of ours. */
  private static final Pattern YEAR = Pattern.compile("(?<!\\d)(1[5-9]\\d\\d|20\\d\\d)(?!\\d)");

  private final RawRecord raw;
  private final Optional<String> id;
  private final List<Problem> problems = new ArrayList<>();
  private final Single single = new Single();
  private final List<String> kindsPrinted = new ArrayList<>();
  private final List<Author> authors = new ArrayList<>();
  private final List<String> keywords = new ArrayList<>();
  private final List<Link> links = new ArrayList<>();
  private final List<OtherField> others = new ArrayList<>();
  private final List<String> titles = new ArrayList<>();
  private Optional<Kind> kind = Optional.empty();
  private OptionalInt year = OptionalInt.empty();

  Draft(RawRecord raw, Optional<String> id) {
    this.raw = raw;
    this.id = id.map(String::strip).filter(text -> !text.isEmpty());
    problems.addAll(raw.doubts());
  }

  void doubt(RawField field, String code, String message) {
    problems.add(
        new Problem(Gathering.place(raw.number(), field.line(), field.name()), code, message));
  }

  void doubt(String field, String code, String message) {
    problems.add(new Problem(Gathering.place(raw.number(), raw.line(), field), code, message));
  }

  void kind(Kind value) {
    kind = Optional.of(value);
  }

  Optional<Kind> kind() {
    return kind;
  }

  void kindPrinted(String text) {
    kindsPrinted.add(text);
  }

  void title(RawField field) {
    String text = withoutStop(field.value());
    if (text.isEmpty()) {
      return;
    }
    if (!titles.isEmpty() && !titles.contains(text)) {
      doubt(
          field,
          "title-twice",
          "The record has a second title, "
              + Limits.quoted(text)
              + "; the first is used, this one was kept beside it. Look which is right.");
    }
    if (!titles.contains(text)) {
      titles.add(text);
    }
  }

  boolean hasTitle() {
    return !titles.isEmpty();
  }

  /** Takes the first value; a later, different one is kept among the others. */
  boolean once(Once what, RawField field, String value) {
    boolean taken = single.take(what, value);
    if (!taken) {
      others.add(new OtherField(field.name(), field.value()));
    }
    return taken;
  }

  /** A field that names a DOI. */
  void doi(RawField field) {
    if (field.value().isBlank()) {
      return;
    }
    Optional<String> found = Identifiers.doiIn(field.value());
    if (found.isEmpty()) {
      other(field);
      doubt(
          field,
          "no-doi",
          Limits.quoted(field.value())
              + " is not a DOI, which starts with 10. and has a slash; it was kept as text.");
    } else if (!once(Once.DOI, field, found.get())) {
      doubt(
          field,
          "doi-twice",
          "The record has a second DOI, "
              + found.get()
              + "; the first is used. Look which is right.");
    }
  }

  /** A field that is a PubMed number. */
  void pmid(RawField field) {
    Optional<String> found = Identifiers.pmidOf(field.value());
    if (found.isEmpty()) {
      if (!field.value().isBlank()) {
        other(field);
        doubt(
            field,
            "no-pmid",
            Limits.quoted(field.value())
                + " is not a PubMed number, which has one to eight digits; it was kept as text.");
      }
    } else if (!once(Once.PMID, field, found.get())) {
      doubt(
          field,
          "pmid-twice",
          "The record has a second PubMed number, "
              + found.get()
              + "; the first is used. Look which is right, and whether two records became one.");
    }
  }

  /** Date and year; the first year that is told counts. */
  void date(RawField field) {
    String text = field.value().strip();
    if (text.isEmpty()) {
      return;
    }
    Matcher found = YEAR.matcher(text);
    if (!found.find()) {
      other(field);
      doubt(
          field,
          "no-year",
          Limits.quoted(text)
              + " is not a year; the record has none unless another field tells it.");
      return;
    }
    int told = Integer.parseInt(found.group(1));
    if (year.isEmpty()) {
      year = OptionalInt.of(told);
    }
    if (Math.abs(year.getAsInt() - told) > 1) {
      other(field);
      doubt(
          field,
          "year-twice",
          "The record has the years "
              + year.getAsInt()
              + " and "
              + told
              + "; the first is used. Look which is right.");
    }
    single.date(text, year.getAsInt() == told);
  }

  void pages(RawField field, String printed) {
    if (printed.isBlank()) {
      return;
    }
    once(
        Once.PAGES,
        field,
        PageSpan.of(printed).map(span -> withCase(span, printed)).orElse(printed.strip()));
  }

  /** Pages in full, in capitals where they were printed so. */
  private static String withCase(PageSpan span, String printed) {
    String text = span.text();
    boolean capital =
        printed.chars().anyMatch(Character::isUpperCase)
            && printed.chars().noneMatch(Character::isLowerCase);
    return capital ? text.toUpperCase(java.util.Locale.ROOT) : text;
  }

  void author(Author author) {
    authors.add(author);
  }

  void keyword(String text) {
    if (!text.isBlank()) {
      keywords.add(text.strip());
    }
  }

  void link(Link link) {
    links.add(link);
  }

  /** A note: relations to other papers and numbers are taken from it, its text is kept. */
  void note(RawField field) {
    links.addAll(Notes.links(field.value()));
    Identifiers.trialIn(field.value()).ifPresent(found -> single.take(Once.TRIAL, found));
    numbersIn(field, false);
    other(field);
  }

  /** Numbers that a free text names as such, taken where no field of their own has them. */
  void numbersIn(RawField field, boolean doiToo) {
    String text = field.value();
    if (Notes.links(text).isEmpty()) {
      Identifiers.pmidIn(text).ifPresent(found -> single.take(Once.PMID, found));
      Identifiers.pmcidIn(text).ifPresent(found -> single.take(Once.PMCID, found));
      if (doiToo) {
        Identifiers.doiIn(text).ifPresent(found -> single.take(Once.DOI, found));
      }
    }
  }

  void other(RawField field) {
    if (!field.value().isBlank()) {
      others.add(new OtherField(field.name(), field.value()));
    }
  }

  /** The reference with its doubts, or the refusal of a record without a title. */
  ReadRecord end(String titleTags) {
    if (raw.broken().isPresent()) {
      return new ReadRecord.Refused(raw.number(), raw.line(), id, List.of(raw.broken().get()));
    }
    if (titles.isEmpty()) {
      String name = id.map(text -> ", " + text).orElse("");
      Problem problem =
          new Problem(
              "record " + raw.number() + ", line " + raw.line() + name,
              "no-title",
              "The record has no title ("
                  + titleTags
                  + "), and nothing to recognise it by. It stays out; add its title.");
      return new ReadRecord.Refused(raw.number(), raw.line(), id, List.of(problem));
    }
    if (year.isEmpty()
        && problems.stream().noneMatch(problem -> problem.code().equals("no-year"))) {
      doubt(
          "", "no-year", "The record has no year. Copies of it are harder to find; add the year.");
    }
    return new ReadRecord.Read(raw.number(), raw.line(), reference(), problems);
  }

  private Reference reference() {
    Titles all =
        new Titles(
            titles.get(0), single.value(Once.ORIGINAL_TITLE), titles.subList(1, titles.size()));
    return new Reference(
        id,
        kind,
        kindsPrinted,
        all,
        authors,
        single.published(year),
        single.identifiers(),
        single.value(Once.ABSTRACT),
        keywords,
        single.value(Once.LANGUAGE),
        links,
        others);
  }

  /** A title without the full stop that some databases set behind it. */
  private static String withoutStop(String title) {
    String text = title.strip();
    return text.endsWith(".") && !text.endsWith("..") && !text.matches(".*\\b\\p{Lu}\\.\\p{Lu}\\.$")
        ? text.substring(0, text.length() - 1).strip()
        : text;
  }
}
