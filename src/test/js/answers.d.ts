// What the service answers, as far as the pages read it. The whole description is served at /q/openapi.

declare namespace Answer {
  interface Status { plant: string; plants: string[] | null; demo: boolean; identityProvider: boolean; version: string }

  interface Session {
    name: string; displayName: string | null; roles: string[]; may: string[]; csrf: string | null;
  }

  interface Problem { title?: string; detail?: string; errors?: { where?: string; message: string }[] }

  interface Account {
    name: string; displayName: string | null; roles: string[]; active: boolean; demo: boolean;
  }

  interface Token {
    id: string; name: string; plant: string | null; roles: string[]; expires: string | null; revoked: string | null;
  }

  interface Approval {
    id: number; action: string; subject: string; reason: string; requestedBy: string; requested: string;
    approve: boolean | null; decidedBy: string | null; decided: string | null; decisionReason: string | null;
  }

  interface Concession {
    id: number; reel: string; record: string; kind: 'use-as-is' | 'regrade' | 'shorten'; requirements: string[]; reason: string;
    requestedBy: string; requested: string; state: 'open' | 'approved' | 'refused' | 'lapsed'; title: string; effect: string; allows?: string;
    decidedBy?: string; decided?: string; decisionReason?: string;
  }

  interface AuditEntry {
    id: number; at: string; actor: string; actorKind: string; from: string | null; action: string; subject: string | null;
    reason: string | null; details: { [name: string]: unknown } | null;
  }

  /** A certificate that a collective certificate names. */
  interface NamedCertificate { number: string; issue: number; reel: string; product: string; state: string; stateText: string }

  interface Collective {
    number: string; order: string; customer: string | null; pdf: string; state: Certificate['state'];
    stateText: string; reasons: string[]; certificates: NamedCertificate[];
  }

  interface Verification {
    number: string | null; genuine: boolean; current: boolean;
    state: 'current' | 'in-question' | 'superseded' | 'withdrawn' | 'altered' | 'unknown';
    stateText: string; stateSentence: string; reasons: string[]; differences: string[];
    issue: number | null; issued: string | null; reel: string | null; product: string | null; certificates: NamedCertificate[]; matches: boolean | null;
  }

  /** Verdicts as the pages show them: an acceptance under conditions has a look of its own. */
  type Look = 'accepted' | 'conditional' | 'rejected' | 'incomplete';

  interface ReelLine {
    reel: string; product: string | null; order: string | null; customer: string | null;
    verdictText: string | null; look: Look | null; held: boolean; awaitsEngineer: boolean;
    concessionUnfinished: boolean; finished: string | null;
    printedLength?: string | null;
  }

  /** One thing that a search found. */
  interface Hit {
    kind: 'reel' | 'order' | 'certificate' | 'customer' | 'product'; name: string; match: string; belongsTo: string | null;
    reel?: ReelLine; certificate?: Certificate; collective?: Collective;
  }

  interface Batch {
    id: string; reels: number; done: number; finished: boolean; askedBy: string; sentence: string;
    notIssued: { reel: string; reason: string }[];
  }

  interface OrderedReel { reel: ReelLine; certificate: Certificate | null; needs: string[]; needsText: string }

  interface Order {
    order: string; customers: string[]; reelCount: number; ready: number; sentence: string; reels: OrderedReel[]; batch: Batch | null;
    collectiveCertificates: Collective[];
  }

  interface Hold {
    id: string; reason: string; heldBy: string; held: string;
    lot: string | null; reel: string | null; run: string | null; machine: string | null;
  }

  interface Certificate {
    record: string; number: string; issue: number; reel: string; order: string | null; customer: string | null; pdf: string;
    state: 'current' | 'in-question' | 'superseded' | 'withdrawn';
    stateText: string; stateSentence: string; reasons: string[];
  }

  interface Reel {
    reel: string; plant: string; product: string | null; printedLength: string | null; printedLengthMarks: string | null; order: string | null;
    customer: string | null; heldSentence: string | null; concessionSentence: string | null; asksRetestReason: boolean; holds: Hold[]; certificates: Certificate[];
    /** The newest in the order of test comes first. */
    records: Record[];
  }

  interface Record {
    id: string; attempt: number; order: number; attempts: number; newest: boolean; attemptSummary: string;
    olderSentence: string | null; retestReason: string | null; awaitsEngineer: boolean;
    retestAcceptance: { by: string; at: string; reason: string; sentence: string } | null;
    verdict: 'accepted' | 'rejected' | 'incomplete'; look: Look;
    verdictText: string; verdictSentence: string; nextSteps: string[]; warnings: string[] | null;
    finished: string | null; limitSet: { id: string; revision: number };
    printedTemperature: string; printedLength: string; findings: Finding[]; conformity: { sentence: string | null } | null;
  }

  /** A finding's figures, ready to be printed. */
  interface Printed {
    value: string; limit: string; sense: string; senseSign: string; margin: string; unit: string;
    uncertainty: string | null; probability: string | null;
  }

  interface Obstacle { kind: string; sentence: string; remedy: string }

  interface Step { title: string; detail: string; printed: string; source: string | null }

  interface Finding {
    requirement: string; property: string; outcome: string; value: number | null; points: number;
    frequency: { value: number; unit: string } | null;
    title: string; plain: string; note: string; outcomeText: string; outcomeSign: string; place: string;
    printed: Printed | null; sentence: string; shortfall: string | null; caution: string | null;
    leastProbable: { sentence: string | null } | null;
    obstacles: Obstacle[]; moreObstacles: number; remark: string | null; failing: boolean; swept: boolean; decisionRule: string | null;
    /** Only where one finding is asked for. */
    explanation?: Step[];
  }

  interface Sweep {
    label: string; pair: number | null; partner: number | null; end: 'near' | 'far' | null;
    frequencies: number[]; corrected: number[];
  }

  interface SweptLimit {
    requirement: string; label: string; unit: string; frequencies: number[];
    upper: number[] | null; lower: number[] | null;
  }

  interface Sweeps {
    property: string; title: string; unit: string; axis: string; sweeps: Sweep[];
    limit: { requirement: string } | null; limits: SweptLimit[];
  }

  interface Alternatives { adviceLines: string[] }
}
