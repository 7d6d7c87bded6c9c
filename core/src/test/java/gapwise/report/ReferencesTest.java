package gapwise.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every work cited by year stands once in docs/references.md, with the same year, volume and first
 * page. A citation belongs to a line of the list if a family name of that line stands shortly
 * before the year.
 */
class ReferencesTest {
  private static final Path ROOT = Path.of("..");

  /** So many characters before a year its authors stand, journal and several names included. */
  private static final int REACH = 160;

  private static final Pattern IN_A_JOURNAL =
      Pattern.compile("\\b((?:19|20)\\d\\d);(\\d+):([a-z]?\\d+)");

  /** A year that is neither a number of patients, a date nor part of a name in code. */
  private static final Pattern BY_YEAR_ALONE =
      Pattern.compile("(?<![\\d.,:;/-])\\b((?:19|20)\\d\\d)\\b(?![\\d.]*\\d|;\\d|-\\d)");

  private static final Pattern CAPITALISED = Pattern.compile("\\p{Lu}\\p{L}+");

  /** A line of the list. */
  private record Work(
      List<String> families, int year, String title, String where, String doi, String checked) {
    static Work of(String line) {
      String[] cells = line.substring(1, line.length() - 1).split("\\|", -1);
      List<String> families =
          Arrays.stream(cells[0].split(",| and others"))
              .map(name -> name.strip().replaceFirst(" \\p{Lu}+$", ""))
              .filter(name -> !name.isEmpty())
              .toList();
      return new Work(
          families,
          Integer.parseInt(cells[1].strip()),
          cells[2].strip(),
          cells[3].strip(),
          cells[4].strip().replace("`", ""),
          cells[5].strip());
    }

    boolean standsAt(String volume, String page) {
      return where.matches(".* " + volume + ":" + page + "(-\\w+)?");
    }

    boolean isNamedIn(String text) {
      return families.stream().anyMatch(text::contains);
    }
  }

  private record Text(String name, String words) {}

  private static List<Work> works() throws IOException {
    return Files.readAllLines(ROOT.resolve("docs/references.md")).stream()
        .filter(line -> line.startsWith("| ") && line.matches(".*\\| \\d{4} \\|.*"))
        .map(Work::of)
        .toList();
  }

  /** The pages on methods without their examples and without names in code. */
  private static List<Text> pages() throws IOException {
    return texts(ROOT.resolve("docs/methods"), ".md").stream()
        .map(
            text ->
                new Text(
                    text.name(),
                    text.words()
                        .replaceAll("(?s)```.*?```", " ")
                        .replaceAll("`[^`]*`", " ")
                        .replaceAll("\\s+", " ")))
        .toList();
  }

  /** The sources with the stars of their comments taken away. */
  private static List<Text> sources() throws IOException {
    return texts(ROOT.resolve("core/src/main/java"), ".java").stream()
        .map(
            text ->
                new Text(
                    text.name(),
                    text.words().replaceAll("\\n\\s*(\\*|//)", " ").replaceAll("\\s+", " ")))
        .toList();
  }

  private static List<Text> texts(Path folder, String ending) throws IOException {
    List<Text> texts = new ArrayList<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(one -> one.toString().endsWith(ending)).sorted().toList()) {
        texts.add(new Text(file.getFileName().toString(), Files.readString(file)));
      }
    }
    return texts;
  }

  private static String before(String words, int place) {
    return words.substring(Math.max(0, place - REACH), place);
  }

  @Test
  void everyPaperCitedWithItsJournalStandsInTheList() throws IOException {
    List<Work> works = works();
    List<Text> all = new ArrayList<>(pages());
    all.addAll(sources());
    Set<String> missing = new LinkedHashSet<>();
    int found = 0;
    for (Text text : all) {
      Matcher cited = IN_A_JOURNAL.matcher(text.words());
      while (cited.find()) {
        found++;
        String names = before(text.words(), cited.start());
        boolean listed =
            works.stream()
                .anyMatch(
                    work ->
                        work.year() == Integer.parseInt(cited.group(1))
                            && work.standsAt(cited.group(2), cited.group(3))
                            && work.isNamedIn(names));
        if (!listed) {
          missing.add(text.name() + ": " + names + cited.group());
        }
      }
    }
    assertEquals(Set.of(), missing);
    assertTrue(found > 200, found + " citations were read");
  }

  @Test
  void everyWorkThatAPageCitesByItsYearAloneStandsInTheList() throws IOException {
    List<Work> works = works();
    Set<String> missing = new LinkedHashSet<>();
    for (Text text : pages()) {
      Matcher cited = BY_YEAR_ALONE.matcher(text.words());
      while (cited.find()) {
        int year = Integer.parseInt(cited.group(1));
        String names = before(text.words(), cited.start());
        boolean listed =
            works.stream().anyMatch(work -> work.year() == year && work.isNamedIn(names));
        if (!listed && CAPITALISED.matcher(lastWords(names)).find()) {
          missing.add(text.name() + ": " + names + year);
        }
      }
    }
    assertEquals(Set.of(), missing);
  }

  /** The three words before a year: a number among figures has none with a capital. */
  private static String lastWords(String text) {
    String[] words = text.strip().split(" ");
    return String.join(" ", Arrays.copyOfRange(words, Math.max(0, words.length - 3), words.length));
  }

  @Test
  void everyPrintedReferenceStandsInTheListWithTheSameWords() throws IOException {
    List<Work> works = works();
    for (Citation printed : Citation.all().values()) {
      String where =
          printed.source()
              + printed.volume().map(volume -> " " + volume + ":").orElse("")
              + printed
                  .pages()
                  .map(pages -> printed.volume().isPresent() ? pages : ", " + pages)
                  .orElse("");
      assertTrue(
          works.stream()
              .anyMatch(
                  work ->
                      work.title().equals(printed.title())
                          && work.year() == printed.year()
                          && work.where().equals(where)
                          && work.doi().equals(printed.doi().orElse(""))),
          () -> printed.title() + " " + where);
    }
  }

  @Test
  void everyLineSaysHowItWasCheckedAndStandsOnce() throws IOException {
    Set<String> seen = new LinkedHashSet<>();
    for (Work work : works()) {
      assertTrue(Set.of("looked up", "from memory").contains(work.checked()), work.title());
      assertTrue(work.doi().isEmpty() || work.doi().matches("10\\.\\d{4,}/\\S+"), work.title());
      assertTrue(work.doi().isEmpty() || work.checked().equals("looked up"), work.title());
      assertTrue(seen.add(work.year() + work.title()), work.title());
      assertTrue(work.doi().isEmpty() || seen.add(work.doi()), work.doi());
    }
  }
}
