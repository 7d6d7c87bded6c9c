package gapwise.screening;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/**
 * All papers of a review with all that was chosen of them, as they stand together. Records of one
 * paper are one: what was chosen of any of them counts for the paper, once for each person. Nobody
 * is told here what another chose before she has chosen herself; the pages ask {@link #next} and
 * {@link #mine} for that. It never changes.
 */
public final class Board {
  private final List<String> papers;
  private final UnaryOperator<String> leading;
  private final Map<Stage, Map<String, Map<String, Vote>>> votes = new EnumMap<>(Stage.class);
  private final Map<Stage, Map<String, Ruling>> rulings = new EnumMap<>(Stage.class);
  private final Map<Stage, Map<String, Standing>> standings = new EnumMap<>(Stage.class);

  /**
   * Puts everything on the board.
   *
   * @param papers the reference that leads each paper, in the order in which they are read
   * @param leading the leading reference of any kept reference
   * @param votes in any order; of one person the last one counts
   * @param rulings in any order; the last one counts
   */
  public Board(
      List<String> papers,
      UnaryOperator<String> leading,
      Collection<Vote> votes,
      Collection<Ruling> rulings) {
    this.papers = List.copyOf(papers);
    this.leading = leading;
    for (Stage stage : Stage.values()) {
      this.votes.put(stage, new HashMap<>());
      this.rulings.put(stage, new HashMap<>());
    }
    for (Vote vote : votes) {
      of(this.votes, vote.stage())
          .computeIfAbsent(leading.apply(vote.reference()), none -> new TreeMap<>())
          .merge(vote.reader().key(), vote, Board::later);
    }
    for (Ruling ruling : rulings) {
      of(this.rulings, ruling.stage())
          .merge(
              leading.apply(ruling.reference()),
              ruling,
              (one, other) -> one.when().isAfter(other.when()) ? one : other);
    }
    for (Stage stage : Stage.values()) {
      standings.put(stage, stood(stage));
    }
  }

  private static Vote later(Vote one, Vote other) {
    return one.when().isAfter(other.when()) ? one : other;
  }

  private static <T> T of(Map<Stage, T> map, Stage stage) {
    return Objects.requireNonNull(map.get(stage), stage::code);
  }

  private Map<String, Standing> stood(Stage stage) {
    Map<String, Standing> stood = new LinkedHashMap<>();
    for (String paper : papers) {
      if (stage == Stage.TITLE || standing(Stage.TITLE, paper).keeps()) {
        stood.put(
            paper,
            Standing.of(
                List.copyOf(chosen(stage, paper).values()),
                Optional.ofNullable(of(rulings, stage).get(paper))));
      }
    }
    return stood;
  }

  private Map<String, Vote> chosen(Stage stage, String paper) {
    return of(votes, stage).getOrDefault(paper, Map.of());
  }

  /** The papers that are read at a stage, in order: of the full texts, those kept before. */
  public List<String> papers(Stage stage) {
    return List.copyOf(of(standings, stage).keySet());
  }

  /** Where a paper stands; waiting where it is none of this stage. */
  public Standing standing(Stage stage, String paper) {
    return of(standings, stage).getOrDefault(leading.apply(paper), new Standing.Waiting(0));
  }

  /** What a person chose of a paper. */
  public Optional<Vote> mine(Stage stage, String paper, Reader reader) {
    return Optional.ofNullable(chosen(stage, leading.apply(paper)).get(reader.key()));
  }

  /**
   * The papers that a person has still to read, in order: not decided, not chosen by her, and not
   * yet by two others.
   */
  public List<String> next(Stage stage, Reader reader) {
    List<String> open = new ArrayList<>();
    of(standings, stage)
        .forEach(
            (paper, standing) -> {
              if (standing instanceof Standing.Waiting
                  && !chosen(stage, paper).containsKey(reader.key())) {
                open.add(paper);
              }
            });
    return open;
  }

  /** What a person chose, the last first. */
  public List<Vote> by(Stage stage, Reader reader) {
    return of(votes, stage).values().stream()
        .flatMap(chosen -> Optional.ofNullable(chosen.get(reader.key())).stream())
        .sorted(Comparator.comparing(Vote::when).reversed())
        .toList();
  }

  /** Papers of which two people chose differently, with what each chose, in order. */
  public Map<String, Standing.Apart> apart(Stage stage) {
    Map<String, Standing.Apart> apart = new LinkedHashMap<>();
    of(standings, stage)
        .forEach(
            (paper, standing) -> {
              if (standing instanceof Standing.Apart two) {
                apart.put(paper, two);
              }
            });
    return apart;
  }

  /** Who has chosen anything at a stage, with how many papers, by name. */
  public Map<Reader, Integer> readers(Stage stage) {
    Map<String, Reader> names = new TreeMap<>();
    Map<String, Integer> counts = new HashMap<>();
    for (String paper : of(standings, stage).keySet()) {
      chosen(stage, paper)
          .forEach(
              (key, vote) -> {
                names.putIfAbsent(key, vote.reader());
                counts.merge(key, 1, Integer::sum);
              });
    }
    Map<Reader, Integer> readers = new LinkedHashMap<>();
    names.forEach((key, reader) -> readers.put(reader, counts.getOrDefault(key, 0)));
    return readers;
  }

  /** How far each two people agree who have chosen of one paper, by name. */
  public List<Agreement> agreement(Stage stage) {
    List<Reader> readers = List.copyOf(readers(stage).keySet());
    List<Agreement> agreement = new ArrayList<>();
    for (int i = 0; i < readers.size(); i++) {
      for (int j = i + 1; j < readers.size(); j++) {
        Agreement two = agreement(stage, readers.get(i), readers.get(j));
        if (two.papers() > 0) {
          agreement.add(two);
        }
      }
    }
    return agreement;
  }

  private Agreement agreement(Stage stage, Reader first, Reader second) {
    int[] counts = new int[4];
    for (String paper : of(standings, stage).keySet()) {
      Map<String, Vote> chosen = chosen(stage, paper);
      Vote one = chosen.get(first.key());
      Vote other = chosen.get(second.key());
      if (one != null && other != null) {
        counts[(one.choice().keeps() ? 0 : 2) + (other.choice().keeps() ? 0 : 1)]++;
      }
    }
    return new Agreement(first, second, counts[0], counts[1], counts[2], counts[3]);
  }
}
