package gapwise.supplement;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.cohort.CohortDecision;
import gapwise.cohort.DecisionJson;
import gapwise.datapackage.PackageReader;
import gapwise.datapackage.PackageWriter;
import gapwise.datapackage.PackagedFile;
import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.table.TableFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** A supplement, found whole to its last byte, read part by part. */
final class SupplementReader {
  /** Of a plan, a result or a table; what plans may hold is bounded far below. */
  private static final int MOST_BYTES = 64_000_000;

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final PackageReader reader;

  private SupplementReader(PackageReader reader) {
    this.reader = reader;
  }

  /**
   * Holds every file against its checksum.
   *
   * @throws WrongInputException with what is wrong
   */
  static SupplementReader checked(PackageReader reader) {
    JsonNode own = reader.head().path(SupplementForm.OWN);
    int form = own.path("form").asInt();
    if (!own.path("holds").asText().equals(SupplementForm.HOLDS) || form < 1) {
      throw wrong(
          PackageWriter.DESCRIPTOR,
          "no-supplement",
          "This package is no supplement, as the command supplement writes it.");
    }
    if (form > SupplementForm.FORM) {
      throw wrong(
          PackageWriter.DESCRIPTOR,
          "package-newer",
          "This supplement was written by a newer version of the program ("
              + own.path("program").asText()
              + "). Run it with that version.");
    }
    reader.check();
    return new SupplementReader(reader);
  }

  /** Version of the program that wrote it. */
  String program() {
    return own().path("program").asText();
  }

  /** Whether a study in it is invented. */
  boolean invented() {
    return own().path("invented").asBoolean();
  }

  private JsonNode own() {
    return reader.head().path(SupplementForm.OWN);
  }

  /** Its analyses in their order. */
  List<WrittenAnalysis> analyses() {
    List<WrittenAnalysis> all = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (JsonNode one : own().path("analyses")) {
      WrittenAnalysis analysis = WrittenAnalysis.of(one);
      if (!names.add(analysis.name())) {
        throw wrong(
            PackageWriter.DESCRIPTOR,
            "analysis-twice",
            "Two analyses are called " + analysis.name() + ". Get the supplement again.");
      }
      all.add(analysis);
    }
    if (all.isEmpty()) {
      throw wrong(
          PackageWriter.DESCRIPTOR, "no-analysis", "It names no analysis that could be run again.");
    }
    return all;
  }

  /** Its studies; none where its plans need none. */
  List<Study> studies() {
    List<TableFile> tables = new ArrayList<>();
    for (String sheet : Export.sheets()) {
      PackagedFile file = required(SupplementData.path(sheet));
      tables.add(new TableFile(sheet + ".csv", () -> reader.read(file)));
    }
    boolean needed = analyses().stream().anyMatch(one -> one.asking() != Asking.PLAN);
    try {
      return SupplementData.read(tables);
    } catch (WrongInputException none) {
      if (!needed && none.problems().stream().allMatch(one -> one.code().equals("no-studies"))) {
        return List.of();
      }
      throw none;
    }
  }

  /** What persons settled of shared patients. */
  List<CohortDecision> decisions() throws IOException {
    List<CohortDecision> decisions = new ArrayList<>();
    for (String line : text(SupplementData.DECISIONS).split("\n")) {
      if (!line.isBlank()) {
        decisions.add(decision(line, decisions.size() + 1));
      }
    }
    return decisions;
  }

  private static CohortDecision decision(String line, int number) {
    try {
      return DecisionJson.read(line);
    } catch (IllegalArgumentException none) {
      throw wrong(
          SupplementData.DECISIONS + ", line " + number,
          "no-decision",
          "The line is no decision about two records. Get the supplement again.");
    }
  }

  /** The plan of an analysis. */
  String plan(WrittenAnalysis analysis) throws IOException {
    return text(analysis.plan());
  }

  /** The result of an analysis as it was written. */
  JsonNode result(WrittenAnalysis analysis) throws IOException {
    try {
      return JSON.readTree(text(analysis.result()));
    } catch (JsonProcessingException none) {
      throw wrong(analysis.result(), "not-json", "It is not JSON. Get the supplement again.");
    }
  }

  /** Writes the tables of a plan into a folder under their own names. */
  void tables(WrittenAnalysis analysis, Path folder) throws IOException {
    for (String table : analysis.tables()) {
      Files.write(folder.resolve(table), bytes(analysis.table(table)));
    }
  }

  private String text(String path) throws IOException {
    return new String(bytes(path), StandardCharsets.UTF_8);
  }

  private byte[] bytes(String path) throws IOException {
    PackagedFile file = required(path);
    if (file.bytes() > MOST_BYTES) {
      throw wrong(path, "file-too-large", "It is larger than " + MOST_BYTES + " bytes.");
    }
    try (InputStream in = reader.read(file)) {
      return in.readAllBytes();
    }
  }

  private PackagedFile required(String path) {
    return reader
        .file(path)
        .orElseThrow(
            () ->
                wrong(
                    path,
                    "file-missing",
                    "The descriptor names no such file, which a supplement has. Get it again."));
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
