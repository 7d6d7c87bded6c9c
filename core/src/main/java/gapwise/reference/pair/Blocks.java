package gapwise.reference.pair;

import gapwise.reference.Link;
import gapwise.reference.likeness.Letters;
import gapwise.reference.likeness.PersonName;
import gapwise.reference.likeness.TitleWords;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;

/**
 * Which records are worth comparing: those that share a key. A strong key, such as a DOI or a whole
 * title, is enough; of weak ones, such as an author and a year, two are needed. Keys that very many
 * records share tell nothing and are left out, so that the work grows with the number of records
 * and not with its square.
 */
final class Blocks {
  /** More records than this under one key are not compared for it; some hundred at worst. */
  static final int MOST_UNDER_A_KEY = 120;

  private static final int STRONG = 2;

  /** Rarest words of a title that are paired. */
  private static final int RARE_WORDS = 5;

  private static final int LETTERS_OF_A_WORD = 4;

  private static final int LETTERS_OF_A_TITLE = 12;

  private final List<Profile> profiles;
  private final Map<String, Integer> frequencies = new HashMap<>();
  private final Map<Long, List<Integer>> strong = new HashMap<>();
  private final Map<Long, List<Integer>> weak = new HashMap<>();
  private final List<Set<Long>> strongOf = new ArrayList<>();
  private final List<Set<Long>> weakOf = new ArrayList<>();

  Blocks(List<Profile> profiles) {
    this.profiles = profiles;
    for (Profile profile : profiles) {
      Set.copyOf(profile.title().words()).forEach(word -> frequencies.merge(word, 1, Integer::sum));
    }
    for (int at = 0; at < profiles.size(); at++) {
      strongOf.add(filed(strongKeys(profiles.get(at)), strong, at));
      weakOf.add(filed(weakKeys(profiles.get(at)), weak, at));
    }
  }

  /** Hands over each pair of places that is worth comparing, the earlier one first. */
  void forEachPair(BiConsumer<Integer, Integer> taker) {
    int[] weight = new int[profiles.size()];
    for (int at = 0; at < profiles.size(); at++) {
      Set<Integer> touched = new TreeSet<>();
      weigh(at, strongOf.get(at), strong, STRONG, weight, touched);
      weigh(at, weakOf.get(at), weak, 1, weight, touched);
      for (int other : touched) {
        if (weight[other] >= STRONG) {
          taker.accept(at, other);
        }
        weight[other] = 0;
      }
    }
  }

  private static void weigh(
      int at,
      Set<Long> keys,
      Map<Long, List<Integer>> blocks,
      int worth,
      int[] weight,
      Set<Integer> touched) {
    for (Long key : keys) {
      List<Integer> block = blocks.getOrDefault(key, List.of());
      if (block.size() < 2 || block.size() > MOST_UNDER_A_KEY) {
        continue;
      }
      for (int other : block) {
        if (other > at) {
          weight[other] += worth;
          touched.add(other);
        }
      }
    }
  }

  private static Set<Long> filed(Set<String> keys, Map<Long, List<Integer>> blocks, int at) {
    Set<Long> hashes = new TreeSet<>();
    for (String key : keys) {
      long hash = hash(key);
      if (hashes.add(hash)) {
        blocks.computeIfAbsent(hash, none -> new ArrayList<>(2)).add(at);
      }
    }
    return hashes;
  }

  /** FNV-1a with 64 bits; two keys that fall together cost a comparison, nothing else. */
  private static long hash(String key) {
    long hash = 0xcbf29ce484222325L;
    for (int at = 0; at < key.length(); at++) {
      hash = (hash ^ key.charAt(at)) * 0x100000001b3L;
    }
    return hash;
  }

  private Set<String> strongKeys(Profile profile) {
    Set<String> keys = new TreeSet<>();
    profile.doi().ifPresent(doi -> keys.add("doi " + doi));
    profile.pmid().ifPresent(pmid -> keys.add("pmid " + pmid));
    profile.trial().ifPresent(trial -> keys.add("trial " + trial));
    for (Link link : profile.links()) {
      link.doi().ifPresent(doi -> keys.add("doi " + doi));
      link.pmid().ifPresent(pmid -> keys.add("pmid " + pmid));
      LinkMatch.placeKey(link.text()).ifPresent(place -> keys.add("place " + place));
    }
    String author = firstAuthor(profile);
    for (TitleWords title : profile.titles()) {
      keys.add(
          "title "
              + title.letters()
              + (title.letters().length() < LETTERS_OF_A_TITLE ? author : ""));
      if (title.mainLetters().length() >= LETTERS_OF_A_TITLE) {
        keys.add("main " + title.mainLetters() + " " + author);
      }
    }
    profile
        .pages()
        .ifPresent(
            pages ->
                profile
                    .volume()
                    .ifPresent(volume -> keys.add("place " + volume + "|" + pages.first())));
    return keys;
  }

  private Set<String> weakKeys(Profile profile) {
    Set<String> keys = new TreeSet<>();
    for (TitleWords title : profile.titles()) {
      keys.add("main " + title.mainLetters());
      rareWords(title, keys);
      int start = Math.min(4, title.words().size());
      keys.add("start " + String.join("", title.words().subList(0, start)) + firstAuthor(profile));
    }
    profile.year().ifPresent(year -> keyedByYear(profile, year, keys));
    return keys;
  }

  /** Under a year and the one after it, so that neighbouring years meet. */
  private static void keyedByYear(Profile profile, int year, Set<String> keys) {
    List<String> words = profile.title().words();
    String start = String.join("", words.subList(0, Math.min(4, words.size())));
    for (int near = year; near <= year + 1; near++) {
      keys.add("start " + start + near);
      for (String name : names(profile)) {
        keys.add("author " + name + near);
      }
      for (String group : profile.groups()) {
        keys.add("group " + group + near);
      }
      int told = near;
      profile
          .pages()
          .filter(pages -> pages.first().length() > 2)
          .ifPresent(pages -> keys.add("page " + pages.first() + "|" + told));
    }
  }

  /**
   * The first three and the last author; of the first one the given name too, should it be
   * exchanged.
   */
  private static Set<String> names(Profile profile) {
    Set<String> names = new TreeSet<>();
    List<PersonName> people = profile.people();
    for (int at = 0; at < people.size(); at++) {
      if (at < 3 || at == people.size() - 1) {
        names.add(people.get(at).skeleton());
      }
    }
    if (!people.isEmpty()) {
      names.add(Letters.skeleton(people.get(0).given()));
    }
    names.remove("");
    return names;
  }

  private static String firstAuthor(Profile profile) {
    return profile.people().isEmpty() ? "" : profile.people().get(0).skeleton();
  }

  /** Pairs of the rarest words: a slip spoils one word, not all of them. */
  private void rareWords(TitleWords title, Set<String> keys) {
    List<String> rare =
        title.words().stream()
            .distinct()
            .filter(word -> word.length() >= LETTERS_OF_A_WORD)
            .sorted(
                java.util.Comparator.comparing((String word) -> frequencies.getOrDefault(word, 0))
                    .thenComparing(word -> word))
            .limit(RARE_WORDS)
            .sorted()
            .toList();
    for (int first = 0; first < rare.size(); first++) {
      for (int second = first + 1; second < rare.size(); second++) {
        keys.add("words " + rare.get(first) + " " + rare.get(second));
      }
    }
  }
}
