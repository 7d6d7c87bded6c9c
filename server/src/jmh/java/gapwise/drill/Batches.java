package gapwise.drill;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;

/**
 * Imports of invented studies and what became of them: every study names its batch and revision, so
 * that what is lost and what is half can be counted.
 */
final class Batches {
  private static final int REVISIONS = 3;
  private static final List<String> METHODS =
      List.of("bone-transport", "induced-membrane", "autograft", "allograft", "printed-scaffold");

  private final SplittableRandom random;
  private final int fewest;
  private final int most;
  private final Map<String, Batch> batches = new LinkedHashMap<>();

  /** One batch: how many studies, the last revision handed in, the last that was acknowledged. */
  private static final class Batch {
    private final int size;
    private int tried;
    private int acknowledged;

    Batch(int size) {
      this.size = size;
    }
  }

  /** What is handed in: revision of a batch. */
  record Handed(String batch, int revision, int studies) {}

  Batches(SplittableRandom random, int fewest, int most) {
    this.random = random;
    this.fewest = fewest;
    this.most = most;
  }

  /** A new batch, or in four of ten cases the next revision of an old one. */
  Handed next() {
    List<String> open = new ArrayList<>();
    batches.forEach(
        (name, batch) -> {
          if (batch.tried < REVISIONS) {
            open.add(name);
          }
        });
    String name =
        !open.isEmpty() && random.nextDouble() < 0.4
            ? open.get(random.nextInt(open.size()))
            : "batch" + batches.size();
    Batch batch = batches.computeIfAbsent(name, n -> new Batch(random.nextInt(fewest, most + 1)));
    batch.tried++;
    return new Handed(name, batch.tried, batch.size);
  }

  void acknowledged(Handed handed) {
    batches.get(handed.batch()).acknowledged = handed.revision();
  }

  /** Studies, groups and outcomes of a revision as the files of a template, by name. */
  static Map<String, String> files(Handed handed) {
    StringBuilder studies =
        new StringBuilder("study_id,title,first_author,year,design,union_definition\r\n");
    StringBuilder arms = new StringBuilder("study_id,arm_id,method,patients\r\n");
    StringBuilder outcomes =
        new StringBuilder("study_id,arm_id,outcome,events,total,unit_counted\r\n");
    for (int i = 0; i < handed.studies(); i++) {
      String id = handed.batch() + "-" + i;
      studies.append(id).append(",Invented drill series revision").append(handed.revision());
      studies.append(" number ").append(i).append(",Author").append(i % 97).append(",");
      studies.append(1990 + i % 35).append(",retrospective-series,bridging of three cortices\r\n");
      for (int arm = 0; arm < 2; arm++) {
        char letter = (char) ('A' + arm);
        int total = 20 + i % 30;
        arms.append(id).append(',').append(letter).append(',');
        arms.append(METHODS.get((i + arm) % METHODS.size())).append(',').append(total);
        arms.append("\r\n");
        outcomes.append(id).append(',').append(letter).append(",union,");
        outcomes.append(total - 3 - i % 5).append(',').append(total).append(",limbs\r\n");
      }
    }
    return Map.of(
        "studies.csv", studies.toString(),
        "arms.csv", arms.toString(),
        "outcomes.csv", outcomes.toString());
  }

  static List<Path> write(Handed handed, Path folder) throws IOException {
    List<Path> paths = new ArrayList<>();
    for (Map.Entry<String, String> file : files(handed).entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.writeString(path, file.getValue(), StandardCharsets.UTF_8);
      paths.add(path);
    }
    return paths;
  }

  /**
   * What was lost or is half, each in words; of what stands whole the newest revision counts as
   * acknowledged from now on.
   *
   * @param titles title of each study that is kept, by id
   */
  List<String> faults(Map<String, String> titles) {
    Map<String, List<Integer>> found = new TreeMap<>();
    titles.forEach(
        (id, title) ->
            found
                .computeIfAbsent(id.substring(0, id.lastIndexOf('-')), b -> new ArrayList<>())
                .add(Integer.parseInt(title.replaceFirst(".*revision(\\d+) .*", "$1"))));
    List<String> faults = new ArrayList<>();
    batches.forEach(
        (name, batch) -> {
          List<Integer> revisions = found.getOrDefault(name, List.of());
          if (!revisions.isEmpty()
              && (revisions.size() != batch.size || revisions.stream().distinct().count() != 1)) {
            faults.add("half: " + name + " has " + revisions.size() + " of " + batch.size);
          }
          int kept = revisions.stream().mapToInt(Integer::intValue).min().orElse(0);
          if (kept < batch.acknowledged) {
            faults.add("lost: " + name + " revision " + batch.acknowledged + ", kept " + kept);
          }
          batch.acknowledged = Math.max(batch.acknowledged, kept);
        });
    return faults;
  }
}
