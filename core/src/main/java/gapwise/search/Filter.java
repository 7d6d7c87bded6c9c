package gapwise.search;

import gapwise.appraisal.StudyRisk;
import gapwise.evidence.Arm;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Coded;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The filters by which lists of arms are narrowed and counted. */
enum Filter {
  METHODS {
    @Override
    Set<String> asked(SearchRequest request) {
      return request.methods();
    }

    @Override
    Collection<String> of(Study study, Arm arm, ArmFacts facts) {
      return List.of(arm.method().principal().code());
    }
  },
  BONES {
    @Override
    Set<String> asked(SearchRequest request) {
      return codes(request.bones());
    }

    @Override
    Collection<String> of(Study study, Arm arm, ArmFacts facts) {
      return codes(facts.bones());
    }
  },
  SEGMENTS {
    @Override
    Set<String> asked(SearchRequest request) {
      return request.segments();
    }

    @Override
    Collection<String> of(Study study, Arm arm, ArmFacts facts) {
      return facts.segments();
    }
  },
  INFECTED {
    @Override
    Set<String> asked(SearchRequest request) {
      return codes(request.infected());
    }

    @Override
    Collection<String> of(Study study, Arm arm, ArmFacts facts) {
      return codes(facts.infected().stream().toList());
    }
  },
  DESIGNS {
    @Override
    Set<String> asked(SearchRequest request) {
      return codes(request.designs());
    }

    @Override
    Collection<String> of(Study study, Arm arm, ArmFacts facts) {
      return codes(study.design().stream().toList());
    }
  },
  RISKS {
    @Override
    Set<String> asked(SearchRequest request) {
      return codes(request.risks());
    }

    @Override
    Collection<String> of(Study study, Arm arm, ArmFacts facts) {
      return List.of(StudyRisk.of(study).code());
    }
  },
  OUTCOMES {
    @Override
    Set<String> asked(SearchRequest request) {
      return request.outcomes();
    }

    @Override
    Collection<String> of(Study study, Arm arm, ArmFacts facts) {
      return facts.outcomes();
    }
  },
  DETAILS {
    @Override
    Set<String> asked(SearchRequest request) {
      return codes(request.details());
    }

    @Override
    Collection<String> of(Study study, Arm arm, ArmFacts facts) {
      return codes(arm.listedDetails());
    }

    @Override
    String part(String code) {
      return code.substring(0, code.indexOf(':') + 1);
    }
  };

  /** A code longer than this is cut, on both sides, since a term of the index has an upper size. */
  private static final int LONGEST_CODE = 200;

  /** The codes that a request asks for; empty when it does not narrow. */
  abstract Set<String> asked(SearchRequest request);

  /** The codes of an arm. */
  abstract Collection<String> of(Study study, Arm arm, ArmFacts facts);

  /**
   * The part of the filter that a code belongs to. Codes of one part are alternatives, and parts
   * narrow one another as filters do; most filters have one part.
   */
  String part(String code) {
    return "";
  }

  /** Codes by the parts that they belong to. */
  Collection<Set<String>> byPart(Set<String> codes) {
    return codes.stream()
        .collect(Collectors.groupingBy(this::part, TreeMap::new, Collectors.toSet()))
        .values();
  }

  /** Name of the filter for people who call, and of its field in the index. */
  String field() {
    return name().toLowerCase(Locale.ROOT);
  }

  static String term(String code) {
    return code.length() <= LONGEST_CODE ? code : code.substring(0, LONGEST_CODE);
  }

  private static Set<String> codes(Collection<? extends Coded> coded) {
    return coded.stream().map(Coded::code).collect(Collectors.toCollection(TreeSet::new));
  }
}
