package gapwise.demonstration;

import java.util.List;

/**
 * The names of the invented coastal country in which the demonstration plays. They were put
 * together from words of the sea so that nobody bears them.
 */
final class Scenario {
  static final String COUNTRY = "Quellmar (invented)";
  static final String JOURNAL = "Invented Annals of Quellmar (no such journal)";
  static final String CURRENCY = "Quellmar shells (invented)";

  static final List<String> CENTRES =
      List.of(
          "Port Quessel Harbour Hospital",
          "Brenhythe Cliff Infirmary",
          "Saltmarrow Coast Hospital",
          "Tarnquay Fleet Hospital",
          "Ullismouth Limb Unit",
          "Vessick Point Hospital",
          "Ebbwrack Bay Hospital",
          "Wherrymouth Infirmary",
          "Lantern Skerrow Hospital",
          "Gannetquay General Hospital",
          "Outer Shoalmarrow Infirmary",
          "Fosswrack Quay Hospital",
          "Saint Mizzen's Hospital");

  private static final List<String> SURNAMES =
      List.of(
          "Ottervane",
          "Brisquell",
          "Tamwhistle",
          "Corrowhythe",
          "Velmarrow",
          "Quistenfold",
          "Harrowquay",
          "Penmottle",
          "Sellavane",
          "Drummerhythe",
          "Fennimarsh",
          "Gullswither",
          "Ivernook",
          "Jassamere",
          "Kelpenholt",
          "Lorrimast",
          "Mizzenfold",
          "Nethersprit",
          "Oarsworthe",
          "Pellanquist",
          "Quaymarrow",
          "Rillenstrand",
          "Shoalbright",
          "Tidewhorl",
          "Umberquay",
          "Wrackenhall",
          "Yarrowsprit",
          "Zephanook",
          "Anchorthwaite",
          "Dorymast");

  static final List<String> UNION_DEFINITIONS =
      List.of(
          "bridging of three of four cortices on two views",
          "bridging of two cortices and walking without pain",
          "bridging on computed tomography",
          "frame off and no new deformity at three months");

  static final List<String> INFECTION_DEFINITIONS =
      List.of(
          "pus, a sinus, or the same organism in two deep samples",
          "any return to theatre for infection",
          "by the opinion of the treating surgeon");

  private Scenario() {}

  /** The first author of a study; some sign two studies, as people do. */
  static String surname(int study) {
    return SURNAMES.get(study % SURNAMES.size());
  }

  static String centre(int index) {
    return CENTRES.get(Math.floorMod(index, CENTRES.size()));
  }

  /** The fleet hospital treats mostly service people. */
  static String setting(String centre) {
    return centre.contains("Fleet") ? "military, high income" : "civil, middle income";
  }
}
