package gapwise.reference.pair;

import gapwise.evidence.Citation;
import gapwise.problem.Problem;
import gapwise.reference.Reference;
import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.ReadRecord;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.ReferenceReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What files of references hold, what is doubtful in them, which records may be copies or belong
 * together, and which papers were retracted or corrected.
 *
 * @param files what became of each file
 * @param records what became of each record, in the order of files, without abstracts and other
 *     long texts; {@link ReferenceReader} hands those over one record at a time
 * @param pairs records proposed to a person; nothing is merged
 * @param standings what is told of papers
 */
public record ReferenceProposals(
    List<FileAnswer> files,
    List<Handled> records,
    List<ProposedPair> pairs,
    List<Standing> standings) {

  /**
   * More records than this are more than a review has, and more than the memory of a desk holds.
   */
  public static final int MOST_RECORDS = 200_000;

  /**
   * A record as it was handled.
   *
   * @param key which one
   * @param record what became of it
   */
  public record Handled(RecordKey key, ReadRecord record) {}

  public ReferenceProposals {
    files = List.copyOf(files);
    records = List.copyOf(records);
    pairs = List.copyOf(pairs);
    standings = List.copyOf(standings);
  }

  /** Reads files and compares what they hold. */
  public static ReferenceProposals of(List<ReferenceFile> files) throws IOException {
    return of(files, Map.of());
  }

  /**
   * Reads files and compares what they hold, with one another and with what is in the base.
   *
   * @param files the files
   * @param base citations of the base by the id of their study
   */
  public static ReferenceProposals of(List<ReferenceFile> files, Map<String, Citation> base)
      throws IOException {
    return of(files, base, Onlooker.NONE);
  }

  /**
   * Reads files and compares what they hold, with one another and with what is in the base.
   *
   * @param files the files
   * @param base citations of the base by the id of their study
   * @param onlooker is handed each record as it was read, and told how far it has come
   */
  public static ReferenceProposals of(
      List<ReferenceFile> files, Map<String, Citation> base, Onlooker onlooker) throws IOException {
    List<FileAnswer> answers = new ArrayList<>();
    List<Handled> records = new ArrayList<>();
    List<FiledReference> references = new ArrayList<>();
    base.forEach(
        (id, citation) -> references.add(Citations.filed(id, citation, references.size() + 1)));
    List<String> shown = shown(files);
    for (int at = 0; at < files.size(); at++) {
      ReferenceFile file = files.get(at);
      String name = shown.indexOf(shown.get(at)) == at ? file.name() : shown.get(at);
      Reading reading =
          new Reading(name, shown.get(at), MOST_RECORDS - references.size(), onlooker);
      onlooker.opens(at);
      FileAnswer answer = ReferenceReader.read(file, reading::take);
      answers.add(reading.told(answer));
      records.addAll(reading.records);
      references.addAll(reading.references);
    }
    onlooker.comparing(references.size());
    List<Profile> profiles = references.stream().map(Profile::of).toList();
    List<ProposedPair> pairs = Pairs.of(profiles);
    return new ReferenceProposals(answers, records, pairs, Standings.of(profiles, pairs));
  }

  /**
   * Names without ending; with it where two would be alike, and with a number beside it if they
   * still are.
   */
  private static List<String> shown(List<ReferenceFile> files) {
    List<String> stems =
        files.stream().map(file -> file.name().replaceFirst("\\.[A-Za-z0-9]{1,8}$", "")).toList();
    List<String> shown = new ArrayList<>();
    for (int at = 0; at < files.size(); at++) {
      boolean once = Collections.frequency(stems, stems.get(at)) == 1;
      String name = once ? stems.get(at) : files.get(at).name();
      shown.add(shown.contains(name) ? name + " (" + (at + 1) + ")" : name);
    }
    return shown;
  }

  /** What is proposed of references that were read elsewhere. */
  public static List<ProposedPair> among(List<FiledReference> references) {
    return Pairs.of(references.stream().map(Profile::of).toList());
  }

  /**
   * What is told of papers by references that were read elsewhere.
   *
   * @param references records, among them all that the pairs name
   * @param pairs what is proposed of them, or settled
   */
  public static List<Standing> standings(
      List<FiledReference> references, List<ProposedPair> pairs) {
    return Standings.of(references.stream().map(Profile::of).toList(), pairs);
  }

  /** Collects the records of one file; an id that stands twice names none of them but the first. */
  private static final class Reading {
    private final String file;
    private final String shown;
    private final int most;
    private final Onlooker onlooker;
    private final Set<String> ids = new HashSet<>();
    private final List<Handled> records = new ArrayList<>();
    private final List<FiledReference> references = new ArrayList<>();
    private int leftOut;

    Reading(String file, String shown, int most, Onlooker onlooker) {
      this.file = file;
      this.shown = shown;
      this.most = most;
      this.onlooker = onlooker;
    }

    void take(ReadRecord record) {
      if (records.size() >= most) {
        leftOut++;
        return;
      }
      Optional<String> id = record.id().filter(ids::add);
      RecordKey key = new RecordKey(file, shown, record.number(), record.line(), id);
      onlooker.took(key, record);
      if (record instanceof ReadRecord.Read read) {
        Reference brief = read.reference().withoutTexts();
        references.add(new FiledReference(key, brief));
        records.add(
            new Handled(
                key, new ReadRecord.Read(read.number(), read.line(), brief, read.problems())));
      } else {
        records.add(new Handled(key, record));
      }
    }

    FileAnswer told(FileAnswer answer) {
      if (leftOut == 0) {
        return answer;
      }
      List<Problem> problems = new ArrayList<>(answer.problems());
      problems.add(
          new Problem(
              "",
              "too-many-records",
              leftOut
                  + " records were left out, as no more than "
                  + MOST_RECORDS
                  + " are compared at a time; split the search."));
      return new FileAnswer(
          answer.name(),
          answer.format(),
          answer.encoding(),
          answer.read(),
          answer.doubtful(),
          answer.refused(),
          problems);
    }
  }
}
