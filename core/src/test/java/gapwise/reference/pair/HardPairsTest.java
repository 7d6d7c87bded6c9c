package gapwise.reference.pair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.reference.format.ReferenceFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Each invented pair of the list, read from RIS, is proposed as it says, in either order. */
class HardPairsTest {
  private static final List<String> TAGS =
      List.of("AU", "TI", "JO", "PY", "VL", "SP", "DO", "AN", "TY", "N1");

  @TestFactory
  Stream<DynamicTest> pairs() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    List<String> lines;
    try (InputStream list = getClass().getResourceAsStream("/reference/pairs.txt")) {
      lines =
          new String(
                  Objects.requireNonNull(list, "pairs.txt").readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .toList();
    }
    for (int at = 0; at + 2 < lines.size(); at++) {
      if (lines.get(at).startsWith("= ")) {
        String name = lines.get(at).substring(2);
        String one = ris(lines.get(at + 1));
        String two = ris(lines.get(at + 2));
        tests.add(DynamicTest.dynamicTest(name, () -> holds(name, one, two)));
      }
    }
    assertTrue(tests.size() >= 60);
    return tests.stream();
  }

  private static void holds(String name, String one, String two) throws IOException {
    String expected = name.substring(0, name.indexOf(':'));
    for (String text : List.of(one + two, two + one)) {
      ReferenceProposals proposals =
          ReferenceProposals.of(List.of(ReferenceFile.of("pair.ris", text)));
      assertEquals(2, proposals.files().get(0).read(), text);
      String found =
          proposals.pairs().isEmpty() ? "none" : proposals.pairs().get(0).verdict().word();
      if (expected.equals("not same")) {
        assertTrue(!found.equals("same"), () -> found + "\n" + text);
      } else {
        assertEquals(expected, found, () -> proposals.pairs() + "\n" + text);
      }
    }
  }

  private static String ris(String line) {
    String[] cells = line.split("\\s*\\|\\s*", -1);
    StringBuilder text = new StringBuilder("TY  - " + cells[8].strip() + "\n");
    for (int at = 0; at < cells.length; at++) {
      String value = cells[at].strip();
      if (value.isEmpty() || TAGS.get(at).equals("TY")) {
        continue;
      }
      for (String part : at == 0 ? value.split(";\\s*") : new String[] {value}) {
        String tag = TAGS.get(at) + "  - " + (TAGS.get(at).equals("AN") ? "PMID: " : "");
        text.append(tag).append(part).append("\n");
      }
    }
    return text.append("ER  - \n").toString();
  }
}
