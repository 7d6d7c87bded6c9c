package gapwise.paper.reading;

import gapwise.paper.Line;
import gapwise.paper.Page;
import gapwise.paper.Places;
import gapwise.paper.Word;
import gapwise.printed.Doubt;
import gapwise.printed.Proposed;
import gapwise.untidy.FoundField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Title, first author and year from the top of the first page. */
final class FrontMatter {
  /** Year; volume (issue): pages, as citations are printed. */
  private static final Pattern CITATION =
      Pattern.compile("\\b((?:19|20)[0-9]{2}) ?; ?[0-9]{1,4} ?\\([^()]{1,12}\\) ?: ?[0-9e]");

  /** A title and authors stand in this part of the first page. */
  private static final double TOP_SHARE = 0.4;

  private FrontMatter() {}

  static List<PaperField> of(List<Page> pages) {
    List<PaperField> fields = new ArrayList<>();
    if (pages.isEmpty() || pages.get(0).number() != 1) {
      return fields;
    }
    Page page = pages.get(0);
    List<Line> top =
        page.lines().stream()
            .filter(line -> line.box().bottom() < TOP_SHARE * page.height())
            .sorted(java.util.Comparator.comparingDouble(Line::baseline))
            .toList();
    year(page, fields);
    List<Line> title = title(top);
    if (!title.isEmpty()) {
      List<Word> words = new ArrayList<>();
      title.forEach(line -> words.addAll(line.words()));
      String said = String.join(" ", title.stream().map(Line::text).toList());
      add(fields, page, words, asked("title", said, "The largest words of the first page."));
      author(page, top, title, fields);
    }
    return fields;
  }

  /** The lines in the largest letters, where these are larger than all others. */
  private static List<Line> title(List<Line> top) {
    double largest = top.stream().mapToDouble(Line::size).max().orElse(0);
    List<Line> title = top.stream().filter(l -> l.size() > largest - 0.3).toList();
    boolean few = title.size() <= 5 && title.size() * 2 <= top.size();
    return few ? title : List.of();
  }

  private static void author(Page page, List<Line> top, List<Line> title, List<PaperField> fields) {
    double below = title.get(title.size() - 1).baseline();
    Optional<Line> names =
        top.stream().filter(l -> l.baseline() > below && l.text().matches("\\p{Lu}.*")).findFirst();
    if (names.isEmpty()) {
      return;
    }
    List<Word> first = new ArrayList<>();
    for (Word word : names.get().words()) {
      if (word.text().matches("and|&|und|et")) {
        break;
      }
      first.add(word);
      if (word.text().endsWith(",") || !word.marks().isEmpty()) {
        break;
      }
    }
    boolean name =
        first.size() >= 2 && first.size() <= 5 && first.stream().allMatch(FrontMatter::isName);
    if (name) {
      String surname = first.get(first.size() - 1).text().replaceAll("[,;]$", "");
      add(fields, page, first, asked("first_author", surname, "The first name below the title."));
    }
  }

  private static boolean isName(Word word) {
    return word.text().matches("[\\p{Lu}][\\p{L}.'’-]*[,;]?|de|van|von|der|den|del|da|di|la|le");
  }

  /** One citation of the paper itself at the head or foot of its first page tells the year. */
  private static void year(Page page, List<PaperField> fields) {
    List<Line> edges =
        page.lines().stream()
            .filter(
                l -> l.box().bottom() < 0.2 * page.height() || l.box().top() > 0.9 * page.height())
            .toList();
    List<Line> cited = edges.stream().filter(l -> CITATION.matcher(l.text()).find()).toList();
    List<String> years = new ArrayList<>();
    for (Line line : cited) {
      Matcher citation = CITATION.matcher(line.text());
      while (citation.find()) {
        years.add(citation.group(1));
      }
    }
    if (years.stream().distinct().count() != 1) {
      return;
    }
    String year = years.get(0);
    List<Word> word =
        cited.get(0).words().stream().filter(w -> w.text().contains(year)).limit(1).toList();
    add(fields, page, word, Proposed.taken("year", year, Optional.empty()));
  }

  private static Proposed asked(String column, String value, String why) {
    return Proposed.asked(column, value, Optional.empty(), Doubt.REMARK, why + " Confirm it.");
  }

  private static void add(List<PaperField> fields, Page page, List<Word> words, Proposed value) {
    Places.of(page, words)
        .ifPresent(
            place ->
                fields.add(
                    new PaperField(
                        new FoundField(
                            "studies",
                            new FoundField.Whose(
                                TableFields.NAME, Optional.empty(), Optional.empty()),
                            Optional.empty(),
                            new FoundField.Row(Optional.empty(), Optional.empty()),
                            value,
                            TableFields.NAME,
                            "page " + page.number(),
                            Optional.empty(),
                            place.words()),
                        Optional.of(place))));
  }
}
