package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Nothing in the main code grows past what a newcomer can take in: files, folders, records. */
class SizesTest {
  private static final int MOST_LINES = 300;
  private static final int MOST_FILES = 60;
  private static final int USUAL_FILES = 40;
  private static final int MOST_COMPONENTS = 12;

  /** Folders above {@link #USUAL_FILES}: each further file is one more of the kind named. */
  private static final Map<String, String> ONE_OF_A_KIND =
      Map.of(
          "gapwise/evidence/check", "a rule for records",
          "gapwise/exchange", "a sheet of the template and what is read of it");

  /** Records above {@link #MOST_COMPONENTS}: each is a row of a published format. */
  private static final Map<String, String> PUBLISHED_ROWS =
      Map.of(
          "gapwise.evidence.Study", "the sheet studies, with the rows that hang on it",
          "gapwise.evidence.Baseline", "the columns of the sheet arms on who was treated",
          "gapwise.evidence.OutcomeReport", "the sheet outcomes",
          "gapwise.evidence.PatientRow", "the sheet patients",
          "gapwise.evidence.QuantitySummary", "the columns of a quantity on any sheet");

  private static final List<Path> ROOTS =
      List.of(Path.of("..", "core", "src", "main", "java"), Path.of("src", "main", "java"));

  @Test
  void noFileIsLong() throws IOException {
    List<String> tooLong = new ArrayList<>();
    for (Path file : sources()) {
      int lines = Files.readAllLines(file).size();
      if (lines > MOST_LINES) {
        tooLong.add(file + ": " + lines + " lines");
      }
    }
    assertEquals(List.of(), tooLong, "find what is two things, and part it");
  }

  @Test
  void noFolderIsAHall() throws IOException {
    Map<String, Integer> files = new TreeMap<>();
    for (Path root : ROOTS) {
      try (Stream<Path> all = Files.walk(root)) {
        all.filter(file -> file.toString().endsWith(".java"))
            .map(file -> root.relativize(file.getParent()).toString())
            .forEach(folder -> files.merge(folder, 1, Integer::sum));
      }
    }
    List<String> halls =
        files.entrySet().stream()
            .filter(
                one ->
                    one.getValue() > MOST_FILES
                        || (one.getValue() > USUAL_FILES
                            && !ONE_OF_A_KIND.containsKey(one.getKey())))
            .map(Object::toString)
            .toList();
    assertEquals(List.of(), halls, "part it into rooms");
  }

  @Test
  void noRecordIsWide() {
    JavaClasses ours =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("gapwise");
    TreeSet<String> wide = new TreeSet<>();
    ours.stream()
        .filter(type -> type.isRecord())
        .map(type -> type.reflect())
        .filter(type -> type.getRecordComponents().length > MOST_COMPONENTS)
        .forEach(type -> wide.add(type.getName()));
    assertEquals(new TreeSet<>(PUBLISHED_ROWS.keySet()), wide, "part what is not a row");
  }

  private static List<Path> sources() throws IOException {
    List<Path> sources = new ArrayList<>();
    for (Path root : ROOTS) {
      try (Stream<Path> all = Files.walk(root)) {
        all.filter(file -> file.toString().endsWith(".java")).forEach(sources::add);
      }
    }
    return sources;
  }
}
