package gapwise.load;

import gapwise.evidence.vocabulary.Method;
import gapwise.search.SearchRequest;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.TypedWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * One thing asked, as the address of a page and as the request to the index.
 *
 * @param path path and parameters
 * @param request the same for the index
 */
record Asked(String path, SearchRequest request) {
  private static final long SEED = 7;
  private static final List<String> WORDS =
      List.of("", "docking", "blast", "smoking gait", "stiffness", "diabetes", "rural");
  private static final List<String> DESIGNS = List.of("", "", "retrospective-series", "randomised");

  private static Asked at(String path, Address address) {
    return new Asked(address.at(path), Filters.read(address));
  }

  private static Address none() {
    return new Address(Map.of());
  }

  /** Searches by words and filters, hardly two alike. */
  static List<Asked> searches(int number, boolean outcome) {
    SplittableRandom random = new SplittableRandom(SEED);
    List<Asked> asked = new ArrayList<>();
    for (int i = 0; i < number; i++) {
      Address address = filters(random).with("q", WORDS.get(random.nextInt(WORDS.size())));
      asked.add(at("/studies", outcome ? address.with("outcome", "union") : address));
    }
    return asked;
  }

  /** What stands in the box while someone types a request, a letter more each time. */
  static List<Asked> typed(int number) {
    SplittableRandom random = new SplittableRandom(SEED + 2);
    List<Method> methods = Method.vocabulary().all();
    List<Asked> asked = new ArrayList<>();
    while (asked.size() < number) {
      String method = methods.get(random.nextInt(methods.size())).shortLabel();
      String text = method + " 5-8 cm tibia " + WORDS.get(random.nextInt(WORDS.size()));
      for (int letters = 1; letters <= text.length(); letters++) {
        Address typed = none().with("q", text.substring(0, letters));
        asked.add(new Asked(typed.at("/understood"), Filters.read(TypedWords.understood(typed))));
      }
    }
    return asked;
  }

  /** Maps narrowed in 4,800 ways, far more than are remembered. */
  static List<Asked> maps(int number) {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    List<Asked> asked = new ArrayList<>();
    for (int i = 0; i < number; i++) {
      Address address =
          filters(random)
              .without(List.of("from", "to", "method"))
              .with("year-to", Integer.toString(2005 + random.nextInt(20)));
      asked.add(at("/map", address));
    }
    return asked;
  }

  /** The same map again and again, as when many people open it. */
  static List<Asked> sameMap() {
    return List.of(at("/map", none()));
  }

  private static Address filters(SplittableRandom random) {
    int from = random.nextInt(8);
    Address address =
        none()
            .with("from", Integer.toString(from))
            .with("to", Integer.toString(from + 2 + random.nextInt(6)))
            .with("infected", random.nextInt(3) == 0 ? "yes" : "")
            .with("bone", random.nextInt(3) == 0 ? "tibia" : "")
            .with("design", DESIGNS.get(random.nextInt(DESIGNS.size())))
            .with("year-from", Integer.toString(1985 + random.nextInt(20)));
    List<Method> methods = Method.vocabulary().all();
    return random.nextInt(3) == 0
        ? address.with("method", methods.get(random.nextInt(methods.size())).code())
        : address;
  }
}
