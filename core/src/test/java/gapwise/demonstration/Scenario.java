package gapwise.demonstration;

import gapwise.evidence.vocabulary.DefinitionKind;
import java.util.List;
import java.util.Set;

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

  private static final List<String> UNION_DEFINITIONS =
      List.of(
          "bridging of three of four cortices on two views",
          "bridging of two cortices and walking without pain",
          "bridging on computed tomography");

  private static final String UNION_IN_A_FRAME = "frame off and no new deformity at three months";

  /** A membrane or a graft has no frame to come off. */
  private static final String UNION_WITHOUT_A_FRAME =
      "bridging on radiographs and full weight bearing without pain";

  /** Whose definition of union nobody has put into the vocabulary yet. */
  private static final Set<Integer> UNCONFIRMED = Set.of(12, 33);

  /**
   * How a paper defines union.
   *
   * @param of tells papers apart
   * @param frame whether all it speaks of is done in a frame
   */
  static String unionDefinition(int of, boolean frame) {
    int which = of % 4;
    return which < 3
        ? UNION_DEFINITIONS.get(which)
        : frame ? UNION_IN_A_FRAME : UNION_WITHOUT_A_FRAME;
  }

  /** What a reviewer would confirm of a definition; nothing for a study left unconfirmed. */
  static List<DefinitionKind> confirmed(int study, String family, String words) {
    return UNCONFIRMED.contains(study) ? List.of() : DefinitionKind.proposed(family, words);
  }

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
