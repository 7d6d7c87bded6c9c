package gapwise.server.page.desk;

import gapwise.desk.DraftRow;
import gapwise.exchange.Template;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Names for what is added: the first that is free. */
final class NextName {
  private static final int LETTERS = 26;

  private NextName() {}

  /** A, B, ..., Z, then group 27 and on. */
  static String ofGroup(List<DraftRow> arms) {
    Set<String> taken = texts(arms, Template.ARM);
    for (int at = 0; at < LETTERS; at++) {
      String letter = String.valueOf((char) ('A' + at));
      if (!taken.contains(letter)) {
        return letter;
      }
    }
    return free("group ", LETTERS + 1, taken);
  }

  /** Case 1, case 2 and on. */
  static String ofPatient(List<DraftRow> patients) {
    return free("case ", 1, texts(patients, Template.PATIENT));
  }

  private static String free(String before, int from, Set<String> taken) {
    int number = from;
    while (taken.contains(before + number)) {
      number++;
    }
    return before + number;
  }

  private static Set<String> texts(List<DraftRow> rows, String column) {
    return rows.stream().map(row -> row.text(column)).collect(Collectors.toSet());
  }
}
