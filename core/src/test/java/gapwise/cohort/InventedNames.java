package gapwise.cohort;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/**
 * Names of people, towns and hospitals put together from syllables; nobody and nothing bears them.
 */
final class InventedNames {
  private static final String[] STARTS = {
    "Ba", "Ce", "Dro", "Ey", "Fi", "Gu", "Hø", "Ia", "Jö", "Kre", "Lu", "Mä", "Nu", "O", "Pla",
    "Qui", "Ré", "Sku", "Tü", "Ul", "Vé", "Wo", "Xa", "Yo", "Zi", "Bru", "Chla", "Dwa", "Å", "Pho"
  };
  private static final String[] MIDDLES = {
    "ba", "ckle", "dda", "ffi", "gno", "lo", "mme", "nke", "ppa", "rre", "sto", "tu", "vva", "ze"
  };
  private static final String[] PEOPLE = {
    "rd", "nsen", "ski", "tta", "lund", "ová", "dis", "vic", "mann", "eau", "ling", "kis"
  };
  private static final String[] TOWNS = {
    "ham", "ville", "stad", "burgh", "møre", "dorp", "minster", "grad", "field", "haven", "bruck"
  };
  private static final String[] PATRONS = {
    "Ola", "Petronius", "Wilfa", "Ambert", "Idona", "Urbald"
  };

  private final Random random;
  private final Set<String> used = new HashSet<>();

  InventedNames(Random random) {
    this.random = random;
  }

  String person() {
    String initials = "" + capital() + (random.nextInt(3) == 0 ? "" : capital());
    return unused(PEOPLE) + " " + initials;
  }

  String town() {
    return unused(TOWNS);
  }

  /** A hospital in a town: the name that most of its papers use. */
  String hospital(String town) {
    String patron = PATRONS[random.nextInt(PATRONS.length)];
    return switch (random.nextInt(5)) {
      case 0 -> "University Hospital of " + town;
      case 1 -> town + " General Hospital";
      case 2 -> "Saint " + patron + " Hospital, " + town;
      case 3 -> "Department of Orthopaedics, " + town + " Trauma Centre";
      default -> "Institute of Limb Surgery, " + town;
    };
  }

  /** The same hospital as another paper may print it. */
  static String otherwise(String hospital, Random random) {
    String other =
        hospital
            .replaceFirst(
                "^University Hospital of (.+)$",
                random.nextBoolean() ? "$1 University Hospital" : "Univ. Hosp. $1")
            .replaceFirst(
                "^(\\S+) General Hospital$",
                random.nextBoolean() ? "General Hospital of $1" : "$1 Gen. Hosp.")
            .replaceFirst(
                "^Saint (\\S+) Hospital, (.+)$",
                random.nextBoolean() ? "St. $1's Hospital $2" : "St $1 Hosp, $2")
            .replaceFirst("^Department of Orthopaedics, (.+) Trauma Centre$", "Trauma Center $1")
            .replaceFirst("^Institute of Limb Surgery, (.+)$", "Inst. of Limb Surgery $1");
    return random.nextInt(4) == 0 ? other.replace("ø", "oe").replace("ö", "oe") : other;
  }

  List<String> people(int count) {
    List<String> people = new ArrayList<>();
    while (people.size() < count) {
      people.add(person());
    }
    return people;
  }

  private char capital() {
    return (char) ('A' + random.nextInt(26));
  }

  private String unused(String[] ends) {
    while (true) {
      String name =
          STARTS[random.nextInt(STARTS.length)]
              + MIDDLES[random.nextInt(MIDDLES.length)]
              + (random.nextBoolean() ? MIDDLES[random.nextInt(MIDDLES.length)] : "")
              + ends[random.nextInt(ends.length)];
      // Family names are shared by many; one in ten may come again.
      if (used.add(name) || random.nextInt(10) == 0) {
        return name;
      }
    }
  }
}
