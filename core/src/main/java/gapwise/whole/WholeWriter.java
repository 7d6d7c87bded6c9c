package gapwise.whole;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.carried.CarriedLines;
import gapwise.curation.KeptStudy;
import gapwise.curation.ReferenceBase;
import gapwise.curation.StudiesAt;
import gapwise.datapackage.PackageWriter;
import gapwise.exchange.SheetFiles;
import gapwise.reference.format.SearchDone;
import gapwise.reference.format.SearchLogCsv;
import gapwise.reference.kept.KeptJson;
import gapwise.reference.kept.KeptSearch;
import gapwise.store.Backup;
import gapwise.store.DocumentStore;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes a whole evidence base as a package, as it stands after its last change, while others may
 * go on writing. The same base gives the same bytes. Records are held in memory one at a time.
 */
public final class WholeWriter {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final DocumentStore store;
  private final String program;
  private final StudiesAt studies;

  /**
   * @param program version of the program, which the package says
   */
  public WholeWriter(DocumentStore store, String program) {
    this.store = store;
    this.program = program;
    this.studies = StudiesAt.of(store, store.lastChange());
  }

  /**
   * What was written.
   *
   * @param studies that stand
   * @param changes versions of the history
   */
  public record Written(long studies, long changes) {}

  /**
   * Writes it into a new folder, or a new archive where the name ends in .zip.
   *
   * @throws gapwise.problem.WrongInputException at a record that is damaged; nothing is left then
   */
  public Written write(Path target) throws IOException {
    try (PackageWriter writer = PackageWriter.into(target)) {
      Map<String, Long> kinds = new TreeMap<>();
      writer.add(
          WholeForm.history(),
          out -> kinds.putAll(HistoryLines.write(store, studies.change(), out)));
      SheetFiles sheets = SheetFiles.of(each -> studies.forEach(kept -> each.accept(kept.study())));
      for (String sheet : sheets.names()) {
        String path = sheet + WholeForm.CSV;
        writer.add(sheets.described(sheet, path), text(out -> sheets.write(sheet, out)));
      }
      List<StudyHeads.Head> heads = new ArrayList<>();
      studies.forEach(kept -> heads.add(head(kept)));
      writer.add(WholeForm.heads(), text(out -> StudyHeads.write(heads, out)));
      writer.add(
          WholeForm.beside(), text(out -> new CarriedLines(store).write(studies.change(), out)));
      writer.add(WholeForm.searches(), text(out -> SearchLogCsv.write(searches(), out)));
      writer.finish(head(heads.size(), kinds));
      return new Written(heads.size(), studies.change());
    }
  }

  private ObjectNode head(long count, Map<String, Long> kinds) {
    ObjectNode root = WholeForm.head(JSON.createObjectNode());
    ObjectNode own = root.putObject(WholeForm.OWN);
    own.put("holds", WholeForm.HOLDS).put("form", WholeForm.FORM);
    own.put("program", program).put("layout", Backup.layout());
    own.put("changes", studies.change());
    studies.changedAt().ifPresent(when -> own.put("lastChange", when.toString()));
    own.put("studies", count);
    ObjectNode versions = own.putObject("versions");
    kinds.forEach(versions::put);
    return root;
  }

  private static StudyHeads.Head head(KeptStudy kept) {
    return new StudyHeads.Head(kept.study().id(), kept.stamp());
  }

  private List<SearchDone> searches() {
    List<KeptSearch> found = new ArrayList<>();
    store.forEachAt(
        studies.change(),
        ReferenceBase.SEARCH,
        document -> found.add(KeptJson.read(document.json().orElseThrow(), KeptSearch.class)));
    found.sort(
        Comparator.comparing((KeptSearch one) -> one.search().date())
            .thenComparing(one -> one.search().database())
            .thenComparing(one -> one.search().words())
            .thenComparing(KeptSearch::key));
    return found.stream().map(KeptSearch::search).toList();
  }

  private interface Text {
    void write(Writer target) throws IOException;
  }

  private static PackageWriter.Content text(Text text) {
    return (OutputStream out) -> {
      Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
      text.write(writer);
      writer.flush();
    };
  }
}
