package gapwise.exchange;

import gapwise.evidence.Authors;
import gapwise.evidence.Citation;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.ReadAs;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.DoiForm;
import gapwise.exchange.form.ListForm;
import gapwise.exchange.form.MonthForm;
import java.util.List;
import java.util.Optional;

/** The sheet of studies: one row for each body of patients. */
final class StudySheet {
  private static final Field<String> TITLE =
      Field.text("title", "Title", "Title as printed.").asRequired();
  private static final Field<String> AUTHORS =
      Field.text(
              "authors",
              "Authors",
              "All authors as Family, Given, separated by semicolons; a group by its name alone.")
          .like("Example, Ada; Other, B. C.");
  private static final Field<String> FIRST_AUTHOR =
      Field.text("first_author", "First author", "Family name of the first author.")
          .like("Example");
  private static final Field<Integer> YEAR =
      Field.year("year", "Year", "Year of publication.").like("2015");
  private static final Field<String> JOURNAL = Field.text("journal", "Journal", "Name in full.");
  private static final Field<String> VOLUME = Field.text("volume", "Volume", "As printed.");
  private static final Field<String> ISSUE = Field.text("issue", "Issue", "As printed.");
  private static final Field<String> PAGES = Field.text("pages", "Pages", "As printed.");
  private static final Field<String> DOI =
      Field.of("doi", "DOI", "Digital object identifier, from 10. on.", new DoiForm())
          .like("10.1000/182");
  private static final Field<String> PMID = Field.text("pmid", "PMID", "Number in PubMed.");
  private static final Field<String> REGISTER =
      Field.text("register", "Register number", "Number in a register of trials or reviews.");
  private static final Field<List<String>> OTHER_SPELLINGS =
      Field.list(
          "other_spellings",
          "Other spellings",
          "Other spellings of author or title under which the same study is found.");
  private static final Field<ReportKind> REPORT_KIND =
      Field.of(
          "report_kind", "Kind of report", "Blank means article.", CodeForm.of(ReportKind.class));
  private static final Field<Design> DESIGN =
      Field.of(
          "design",
          "Design",
          "Design by the methods of the paper, not by its title.",
          CodeForm.of(Design.class));
  private static final Field<String> DESIGN_WORDS =
      Field.text("design_words", "Design, as printed", "Design in the words of the paper.");
  private static final Field<List<String>> CENTRES =
      Field.list("centres", "Hospitals", "Where the patients were treated.");
  private static final Field<String> COUNTRY = Field.text("country", "Country", "Country.");
  private static final Field<String> SETTING =
      Field.text("setting", "Setting", "Civil, military or mixed; income group.");
  private static final Field<PartialDate> FROM =
      Field.of("recruitment_from", "First recruitment", "Year or month.", new MonthForm())
          .like("2011-08");
  private static final Field<PartialDate> TO =
      Field.of("recruitment_to", "Last recruitment", "Year or month.", new MonthForm())
          .like("2012-10");
  private static final Field<YesOrNo> CONSECUTIVE =
      Field.of(
          "consecutive",
          "Consecutive",
          "Whether patients were consecutive.",
          CodeForm.of(YesOrNo.class));
  private static final Field<YesOrNo> ASSESSOR =
      Field.of(
          "assessor_independent",
          "Assessor independent",
          "Whether someone else than the operating team read the outcomes.",
          CodeForm.of(YesOrNo.class));
  private static final Field<String> FUNDING =
      Field.text("funding", "Funding and interests", "None, public, maker, or as printed.");
  private static final Field<String> UNION =
      Field.text("union_definition", "Definition of union", "In the words of the paper.");
  private static final Field<String> INFECTION =
      Field.text("infection_definition", "Definition of infection", "In the words of the paper.");
  private static final Field<List<DefinitionKind>> UNION_KINDS =
      kinds("union_definition_kinds", "Union by the vocabulary", "union");
  private static final Field<List<DefinitionKind>> INFECTION_KINDS =
      kinds("infection_definition_kinds", "Infection by the vocabulary", "infection");
  private static final Field<String> COHORT =
      Field.text("cohort", "Cohort", "A name shared by studies that report overlapping patients.");
  private static final Field<List<String>> SAME_STUDY =
      Field.list("same_study_as", "Same study as", "Other study_id of the same study.");
  private static final Field<List<String>> OVERLAP_SUSPECTED =
      Field.list(
          "overlap_suspected_with",
          "Overlap suspected with",
          "Other study_id whose patients may be the same, where the papers do not say.");
  private static final Field<ReadAs> READ_AS =
      Field.of(
          "read_as",
          "Read as",
          "What the numbers were read from; blank means not said.",
          CodeForm.of(ReadAs.class));
  private static final Field<String> READ_AT =
      Field.text("read_at", "Address read", "Web address of the page that was read.")
          .like("https://example.org/paper");
  private static final Field<Boolean> INVENTED =
      Field.of("invented", "Invented", "yes for demonstration data only.", CodeForm.yesOrNo());
  private static final Field<ExtractionStatus> STATUS =
      Field.of(
          "status",
          "Extraction",
          "How far extraction has come; blank means extracted.",
          CodeForm.of(ExtractionStatus.class));

  private static Field<List<DefinitionKind>> kinds(String name, String title, String what) {
    return Field.of(
        name,
        title,
        "What the definition of "
            + what
            + " asks for; left blank, it is read from the words and asked about. Separate several"
            + " by semicolons.",
        new ListForm<>(CodeForm.of(DefinitionKind.vocabulary())));
  }

  static final Sheet SHEET =
      new Sheet(
          "studies",
          "One row for each study.",
          List.of(
              Keys.STUDY,
              TITLE,
              FIRST_AUTHOR,
              YEAR,
              AUTHORS,
              JOURNAL,
              VOLUME,
              ISSUE,
              PAGES,
              DOI,
              PMID,
              REGISTER,
              OTHER_SPELLINGS,
              REPORT_KIND,
              DESIGN,
              DESIGN_WORDS,
              CENTRES,
              COUNTRY,
              SETTING,
              FROM,
              TO,
              CONSECUTIVE,
              ASSESSOR,
              FUNDING,
              UNION,
              INFECTION,
              UNION_KINDS,
              INFECTION_KINDS,
              COHORT,
              SAME_STUDY,
              OVERLAP_SUSPECTED,
              READ_AS,
              READ_AT,
              INVENTED,
              STATUS,
              ProvenanceFields.fields().get(0),
              ProvenanceFields.fields().get(1),
              ProvenanceFields.fields().get(2),
              ProvenanceFields.NOTE));

  private StudySheet() {}

  /**
   * The study without arms; empty when the row has no id. Without a title the row is not sound, yet
   * it says that there is the study, so that no other row is blamed.
   */
  static Optional<StudyBuilder> read(RowReader row) {
    Optional<String> id = row.get(Keys.STUDY);
    Optional<String> title = row.get(TITLE);
    Citation.Builder citation = Citation.with(title.orElse("unknown"));
    row.get(AUTHORS).ifPresent(citation::authors);
    row.get(FIRST_AUTHOR).ifPresent(citation::firstAuthor);
    row.get(YEAR).ifPresent(citation::year);
    row.get(JOURNAL).ifPresent(citation::journal);
    row.get(VOLUME).ifPresent(citation::volume);
    row.get(ISSUE).ifPresent(citation::issue);
    row.get(PAGES).ifPresent(citation::pages);
    row.get(DOI).ifPresent(citation::doi);
    row.get(PMID).ifPresent(citation::pmid);
    row.get(REGISTER).ifPresent(citation::register);
    row.get(OTHER_SPELLINGS).ifPresent(citation::otherSpellings);
    StudyBuilder study = Study.with(id.orElse("unknown"), citation.build());
    row.get(REPORT_KIND).ifPresent(study::reportKind);
    row.get(DESIGN).ifPresent(study::design);
    row.get(DESIGN_WORDS).ifPresent(study::designWords);
    row.get(CENTRES).ifPresent(study::centres);
    row.get(COUNTRY).ifPresent(study::country);
    row.get(SETTING).ifPresent(study::setting);
    row.get(FROM).ifPresent(study::recruitmentFrom);
    row.get(TO).ifPresent(study::recruitmentTo);
    row.get(CONSECUTIVE).ifPresent(study::consecutive);
    row.get(ASSESSOR).ifPresent(study::assessorIndependent);
    row.get(FUNDING).ifPresent(study::funding);
    row.get(UNION).ifPresent(study::unionDefinition);
    row.get(INFECTION).ifPresent(study::infectionDefinition);
    row.get(UNION_KINDS).ifPresent(study::unionDefinitionKinds);
    row.get(INFECTION_KINDS).ifPresent(study::infectionDefinitionKinds);
    row.get(COHORT).ifPresent(study::cohort);
    row.get(SAME_STUDY).ifPresent(study::sameStudyAs);
    row.get(OVERLAP_SUSPECTED).ifPresent(study::overlapSuspectedWith);
    row.get(READ_AS).ifPresent(study::readAs);
    row.get(READ_AT).ifPresent(study::readAt);
    row.get(INVENTED).ifPresent(study::invented);
    row.get(STATUS).ifPresent(study::status);
    study.provenance(ProvenanceFields.read(row));
    row.get(ProvenanceFields.NOTE).ifPresent(study::note);
    study.missing(row.missing());
    return id.isPresent() ? Optional.of(study) : Optional.empty();
  }

  static RowWriter write(Study study) {
    RowWriter row = new RowWriter(SHEET);
    Citation citation = study.citation();
    row.put(Keys.STUDY, study.id());
    row.put(TITLE, citation.title());
    row.put(AUTHORS, citation.authors().map(Authors::text));
    row.put(FIRST_AUTHOR, citation.firstAuthor());
    row.put(YEAR, citation.year());
    row.put(JOURNAL, citation.journal());
    row.put(VOLUME, citation.volume());
    row.put(ISSUE, citation.issue());
    row.put(PAGES, citation.pages());
    row.put(DOI, citation.doi());
    row.put(PMID, citation.pmid());
    row.put(REGISTER, citation.register());
    row.put(OTHER_SPELLINGS, filled(citation.otherSpellings()));
    if (study.reportKind() != ReportKind.ARTICLE) {
      row.put(REPORT_KIND, study.reportKind());
    }
    row.put(DESIGN, study.design());
    row.put(DESIGN_WORDS, study.designWords());
    row.put(CENTRES, filled(study.centres()));
    row.put(COUNTRY, study.country());
    row.put(SETTING, study.setting());
    row.put(FROM, study.recruitmentFrom());
    row.put(TO, study.recruitmentTo());
    row.put(CONSECUTIVE, study.consecutive());
    row.put(ASSESSOR, study.assessorIndependent());
    row.put(FUNDING, study.funding());
    row.put(UNION, study.unionDefinition());
    row.put(INFECTION, study.infectionDefinition());
    row.put(UNION_KINDS, filled(study.unionDefinitionKinds()));
    row.put(INFECTION_KINDS, filled(study.infectionDefinitionKinds()));
    row.put(COHORT, study.cohort());
    row.put(SAME_STUDY, filled(study.sameStudyAs()));
    row.put(OVERLAP_SUSPECTED, filled(study.overlapSuspectedWith()));
    row.put(READ_AS, study.readAs());
    row.put(READ_AT, study.readAt());
    if (study.invented()) {
      row.put(INVENTED, true);
    }
    if (study.status() != ExtractionStatus.EXTRACTED) {
      row.put(STATUS, study.status());
    }
    ProvenanceFields.write(row, study.provenance(), study.note());
    row.missing(study.missing());
    return row;
  }

  private static <T> Optional<List<T>> filled(List<T> items) {
    return items.isEmpty() ? Optional.empty() : Optional.of(items);
  }
}
