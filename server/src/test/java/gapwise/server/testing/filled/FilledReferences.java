package gapwise.server.testing.filled;

import gapwise.server.page.reference.KeptFiles;

/** References kept, with many pairs to be settled, and a file that waits to be kept. */
final class FilledReferences {
  /** Of each pair of {@link KeptFiles#twice}. */
  private static final int PAIRS = 24;

  private static final String ABSTRACT =
      "Background. Missing bone of the tibia after an injury is long in its treatment. Methods."
          + " Forty-one invented patients with 4 to 14 cm of missing tibia were treated by bone"
          + " transport in a frame or over an induced membrane. Results. Bone joined without a"
          + " further graft in 31 of 41 after 11.4 months on average, and infection came back in"
          + " 5. Conclusion. Nothing of this is about real patients.";

  private FilledReferences() {}

  /** A record of twelve authors with an abstract and a long title. */
  static String long12() {
    StringBuilder record = new StringBuilder("TY  - JOUR\nID  - long\n");
    record.append(
        "TI  - Transport of bone in a circular frame against grafting into an induced membrane for"
            + " infected missing bone of the tibial shaft after open fractures: an invented"
            + " comparison of two hospitals that do not exist\n");
    for (String author :
        new String[] {
          "Brisquell, Anselm", "Ivernook, Beate", "Castlemarch, Cyrilla", "Dunmallow, Dietlind",
          "Everholm, Eusebius", "Fennimoor, Fiorella", "Garthwold, Giselher", "Hollinbeck, Henrike",
          "Isendale, Ignatius", "Jorvington, Jocasta", "Kestermere, Konradin", "Lavenhythe, Leonie"
        }) {
      record.append("AU  - ").append(author).append('\n');
    }
    return record
        .append("PY  - 2030\nJO  - Invented Annals of Limb Reconstruction and Bone Infection\n")
        .append("VL  - 4\nIS  - 2\nSP  - 211\nEP  - 239\nDO  - 10.5555/invented-long-2030\n")
        .append("AB  - ")
        .append(ABSTRACT)
        .append("\nER  - \n")
        .toString();
  }

  static void into(Filling filling) throws Exception {
    StringBuilder first = new StringBuilder(long12());
    for (int pair = 0; pair < PAIRS; pair++) {
      first.append(KeptFiles.twice(pair));
    }
    KeptFiles.kept(filling.running(), "first-search-of-an-invented-index.ris", first.toString());
    String second =
        KeptFiles.record("again", "DO  - 10.5555/paper\n")
            + KeptFiles.twice(1)
            + "TY  - JOUR\nID  - u\nTI  - \nAU  - Nobody\nER  - \n"
            + "TY  - JOUR\nID  - v\nTI  - Retraction: Wax splints for the limbs of sailors\n"
            + "PY  - 2004\nJO  - Imagined Bones\nVL  - 12\nSP  - 9\nER  - \n";
    String load = filling.upload("/references", "files", "second-search.ris", second);
    filling.settled(load);
    filling.shows("references: a file and one kept", "/references");
    filling.shows("references: a load with doubts", load);
    filling.shows("references: kept", "/references/kept");
    filling.shows("references: many pairs", "/references/pairs");
  }
}
