package org.fusewright.jobs.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.job.ReturnPath;
import org.fusewright.jobs.JobReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.nio.charset.StandardCharsets;

class JobReaderTest {
    /** A sound job with every field; single quotes stand for double ones. */
    private static final String WHOLE =
            """
            {'reference': 'R-1', 'title': 'Machine', 'customer': 'Someone', 'currency': 'EUR',
             'supply': {'nominalV': 12, 'engineOffV': 12.1, 'chargingV': 14.3,
                        'batteryResistanceMilliohm': 11, 'chargingOutputA': 25, 'idleOutputA': 9},
             'surroundings': {'ambientC': 35, 'blockAmbientC': 55, 'bundledLeads': 4},
             'feeds': [{'id': 'bat', 'terminal': '30', 'lengthM': 0.6, 'sourceDistanceM': 0.15,
                        'diversity': 0.7, 'ratingA': 40, 'gauge': '6 mm2'},
                       {'id': 'sw', 'terminal': '15', 'lengthM': 0.9, 'sourceDistanceM': 0}],
             'circuits': [
               {'id': 'pump', 'title': 'Fuel pump', 'feed': 'bat', 'location': 'seat',
                'essential': true, 'runM': 1.1, 'returnPath': 'wire', 'colour': 'RDBK',
                'devices': ['fuse'], 'ratingA': 10, 'gauge': '16 AWG', 'maxDropPercent': 4,
                'relay': {'triggerFrom': 'controller', 'triggerM': 0.8, 'groundM': 0.3},
                'loads': [{'title': 'Pump', 'kind': 'pump', 'amps': 5.2, 'ratedV': 13.5, 'count': 2,
                           'inrush': {'multiple': 6, 'ms': 200}, 'duty': 'momentary',
                           'branchM': 0.2}]},
               {'id': 'lamp', 'feed': 'sw', 'location': 'seat', 'runM': 1,
                'loads': [{'kind': 'led', 'watts': 24}]}],
             'locations': [{'name': 'seat', 'fromFeedM': 0.4}],
             'choices': {'devices': ['manual-reset'], 'wireFamily': 'metric-thin',
                         'lockingWedge': false, 'plugEmptyCavities': false, 'sparePositions': 1,
                         'spareFusesPerRating': 2, 'slackPercent': 6, 'endAllowanceMm': 45,
                         'cutStepMm': 5, 'pigtailMm': 160, 'jumperMm': 130}}
            """;

    private static final String SHORTEST =
            """
            {'reference': 'R-2', 'supply': {'nominalV': 24},
             'feeds': [{'id': 'bat', 'terminal': '30', 'lengthM': 1, 'sourceDistanceM': 0.1}],
             'circuits': [{'id': 'a', 'feed': 'bat', 'runM': 2,
                           'loads': [{'kind': 'resistive', 'watts': 48}]},
                          {'id': 'b', 'feed': 'bat', 'runM': 2, 'essential': true,
                           'loads': [{'kind': 'coil', 'amps': 1}]}]}
            """;

    private static JobReading read(String json) {
        return JobReader.read(json.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
    }

    private static String wholeWith(String part, String instead) {
        assertThat(WHOLE).contains(part);
        return WHOLE.replace(part, instead);
    }

    @Test
    void keepsEveryFieldAsGiven() {
        JobReading reading = read(WHOLE);
        assertThat(reading.problems()).isEmpty();
        Job job = reading.getJob();
        assertThat(job.reference()).isEqualTo("R-1");
        assertThat(job.supply().chargingOutputA()).hasValue(25);
        assertThat(job.supply().engineOffV()).isEqualTo(12.1);
        assertThat(job.surroundings().blockAmbient().value()).isEqualTo(55);
        assertThat(job.supply().idleOutputA()).hasValue(9);
        assertThat(job.feeds()).hasSize(2);
        assertThat(job.feeds().getFirst().diversity()).isEqualTo(0.7);
        assertThat(job.feeds().getFirst().ratingA()).hasValue(40);
        assertThat(job.feeds().getFirst().gauge().orElseThrow().label()).isEqualTo("6.0 mm2");
        assertThat(job.feeds().getLast().diversity()).isEqualTo(1);
        assertThat(job.feeds().getLast().ratingA()).isEmpty();
        assertThat(job.feeds().getLast().gauge()).isEmpty();
        assertThat(job.findLocation("seat").orElseThrow().fromFeedM()).isEqualTo(0.4);
        assertThat(job.choices().devices()).containsExactly(DeviceKind.MANUAL_RESET);
        assertThat(job.choices().lockingWedge()).isFalse();
        assertThat(job.choices().plugEmptyCavities()).isFalse();
        assertThat(job.choices().jumper().value()).isEqualTo(130);
        Circuit pump = job.circuits().getFirst();
        assertThat(pump.returnPath()).isEqualTo(ReturnPath.WIRE);
        assertThat(pump.colour().orElseThrow().code()).isEqualTo("RDBK");
        assertThat(pump.devices()).containsExactly(DeviceKind.FUSE);
        assertThat(pump.ratingA()).hasValue(10);
        assertThat(pump.gauge().orElseThrow().label()).isEqualTo("16 AWG");
        assertThat(pump.maxDropPercent()).isEqualTo(4);
        assertThat(pump.relay().orElseThrow().isTriggeredByController()).isTrue();
        Load load = pump.loads().getFirst();
        assertThat(load.ratedA()).isEqualTo(5.2);
        assertThat(load.count()).isEqualTo(2);
        assertThat(load.inrush().multiple()).isEqualTo(6);
        assertThat(load.duty()).isEqualTo(Duty.MOMENTARY);
    }

    @Test
    void fillsInWhatIsLeftOut() {
        Job job = read(SHORTEST).getJob();
        assertThat(job.title()).isEqualTo("R-2");
        assertThat(job.customer()).isEmpty();
        assertThat(job.currency().getCode()).isEqualTo("EUR");
        assertThat(job.supply().engineOffV()).isEqualTo(24.4);
        assertThat(job.supply().chargingV()).isEqualTo(28.4);
        assertThat(job.supply().batteryResistanceMilliohm()).isEqualTo(12);
        assertThat(job.surroundings().ambient().value()).isEqualTo(40);
        assertThat(job.surroundings().blockAmbient().value()).isEqualTo(50);
        assertThat(job.surroundings().bundledLeads()).isEqualTo(6);
        assertThat(job.choices().devices())
                .containsExactly(DeviceKind.AUTO_RESET, DeviceKind.MANUAL_RESET, DeviceKind.FUSE);
        assertThat(job.choices().cutStep().value()).isEqualTo(10);
        assertThat(job.choices().pigtail().value()).isEqualTo(310);
        Circuit first = job.circuits().getFirst();
        assertThat(first.title()).isEqualTo("a");
        assertThat(first.location()).isEqualTo("main");
        assertThat(first.maxDropPercent()).isEqualTo(10);
        assertThat(first.devices()).isEqualTo(job.choices().devices());
        assertThat(first.loads().getFirst().title()).isEqualTo("resistive");
        assertThat(first.loads().getFirst().ratedA()).isEqualTo(2);
        assertThat(first.loads().getFirst().ratedV()).isEqualTo(24);
        assertThat(job.circuits().getLast().maxDropPercent()).isEqualTo(3);
    }

    @Test
    void takesAnExplicitNullAsLeftOut() {
        String json =
                WHOLE.replace("'ratingA': 10", "'ratingA': null")
                        .replace("'wireFamily': 'metric-thin'", "'wireFamily': null")
                        .replace("'gauge': '16 AWG'", "'gauge': null")
                        .replace("'customer': 'Someone'", "'customer': null");
        Job job = read(json).getJob();
        assertThat(job.circuits().getFirst().ratingA()).isEmpty();
        assertThat(job.choices().wireFamily()).isEmpty();
        assertThat(job.customer()).isEmpty();
    }

    @Test
    void takesAJobWithoutCircuits() {
        String json =
                "{'reference':'R','supply':{'nominalV':6},'circuits':[],'feeds':[{'id':'b',"
                        + "'terminal':'15','lengthM':1,'sourceDistanceM':0}]}";
        assertThat(read(json).getJob().circuits()).isEmpty();
    }

    /** What stands in the whole job, what stands there instead, where it hurts, a word of why. */
    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            textBlock =
                    """
                    'reference': 'R-1',       |                              | /reference                    | missing
                    'reference': 'R-1'        | 'reference': ' '             | /reference                    | 1 to 120
                    'reference': 'R-1'        | 'reference': null            | /reference                    | missing
                    'title': 'Machine'        | 'title': 7                   | /title                        | text
                    'title': 'Machine'        | 'title': 'a\\u0007'          | /title                        | control
                    'title': 'Machine'        | 'title': '\\ud800'           | /title                        | control
                    'customer': 'Someone'     | 'custmer': 'Someone'         | /custmer                      | unknown field
                    'customer': 'Someone'     | 'a/b~c': 1                   | /a~1b~0c                      | unknown field
                    'currency': 'EUR'         | 'currency': 'euro'           | /currency                     | ISO 4217
                    'nominalV': 12            | 'nominalV': 48               | /supply/nominalV              | 6, 12, 24
                    'nominalV': 12            | 'nominalV': '12'             | /supply/nominalV              | 6, 12, 24
                    'nominalV': 12,           |                              | /supply/nominalV              | missing
                    'engineOffV': 12.1        | 'engineOffV': 15             | /supply/chargingV             | at least
                    'chargingV': 14.3         | 'chargingV': 1e999           | /supply/chargingV             | finite
                    'batteryResistanceMilliohm': 11 | 'batteryResistanceMilliohm': 0 | /supply/batteryResistanceMilliohm | above 0
                    'chargingOutputA': 25     | 'chargingOutputA': -1        | /supply/chargingOutputA       | above 0
                    'ambientC': 35            | 'ambientC': 900              | /surroundings/ambientC        | to 150
                    'bundledLeads': 4         | 'bundledLeads': 2.5          | /surroundings/bundledLeads    | whole
                    'bundledLeads': 4         | 'bundledLeads': true         | /surroundings/bundledLeads    | not true
                    'terminal': '30'          | 'terminal': '31'             | /feeds/0/terminal             | 30, 15
                    'terminal': '30'          | 'terminal': 30               | /feeds/0/terminal             | 30, 15
                    'feed': 'bat'             | 'feed': 'b t'                | /circuits/0/feed              | letters
                    'id': 'sw', 'terminal': '15', 'lengthM': 0.9, 'sourceDistanceM': 0} | 'id': 'sw', 'terminal': '15', 'lengthM': 0.9, 'sourceDistanceM': 0}, {'id': 'sw', 'terminal': '15', 'lengthM': 0.9, 'sourceDistanceM': 0} | /feeds/2/id | twice
                    'terminal': '15'          | 'terminal': 15               | /feeds/1/terminal             | 30, 15
                    'lengthM': 0.6            | 'lengthM': 0                 | /feeds/0/lengthM              | above 0
                    'lengthM': 0.6, 'sou      | 'sou                         | /feeds/0/lengthM              | missing
                    'sourceDistanceM': 0.15   | 'sourceDistanceM': -0.1      | /feeds/0/sourceDistanceM      | from 0
                    'diversity': 0.7          | 'diversity': 0               | /feeds/0/diversity            | above 0 and at most 1
                    'diversity': 0.7          | 'diversity': 1.1             | /feeds/0/diversity            | above 0 and at most 1
                    'ratingA': 40             | 'ratingA': 0                 | /feeds/0/ratingA              | above 0
                    'gauge': '6 mm2'          | 'gauge': '6'                 | /feeds/0/gauge                | mm2
                    'idleOutputA': 9          | 'idleOutputA': -9            | /supply/idleOutputA           | above 0
                    'idleOutputA': 9          | 'idleOutputA': 26            | /supply/idleOutputA           | at most chargingOutputA
                    'id': 'pump'              | 'id': 'lamp'                 | /circuits/1/id                | twice
                    'feed': 'sw'              | 'feed': 'nowhere'            | /circuits/1/feed              | no feed
                    'essential': true         | 'essential': 'yes'           | /circuits/0/essential         | true or false
                    'runM': 1.1               | 'runM': 101                  | /circuits/0/runM              | at most 100
                    'returnPath': 'wire'      | 'returnPath': 'frame'        | /circuits/0/returnPath        | chassis
                    'colour': 'RDBK'          | 'colour': 'RDRD'             | /circuits/0/colour            | IEC 60757
                    'colour': 'RDBK'          | 'colour': 'red'              | /circuits/0/colour            | IEC 60757
                    'devices': ['fuse']       | 'devices': ['fuze']          | /circuits/0/devices/0         | auto-reset
                    'devices': ['fuse']       | 'devices': ['fuse','fuse']   | /circuits/0/devices           | once
                    'devices': ['fuse']       | 'devices': []                | /circuits/0/devices           | 1 to 3
                    'devices': ['fuse']       | 'devices': 'fuse'            | /circuits/0/devices           | list
                    'ratingA': 10             | 'ratingA': -10               | /circuits/0/ratingA           | above 0
                    'gauge': '16 AWG'         | 'gauge': '16'                | /circuits/0/gauge             | mm2
                    'gauge': '16 AWG'         | 'gauge': '13 SAE'            | /circuits/0/gauge             | mm2
                    'gauge': '16 AWG'         | 'gauge': '0 mm2'             | /circuits/0/gauge             | mm2
                    'maxDropPercent': 4       | 'maxDropPercent': 51         | /circuits/0/maxDropPercent    | at most 50
                    'triggerFrom': 'controller' | 'triggerFrom': 'key'       | /circuits/0/relay/triggerFrom | no feed
                    'triggerM': 0.8,          |                              | /circuits/0/relay/triggerM    | missing
                    'groundM': 0.3            | 'groundM': 0.3, 'contactFrom': 'pump' | /circuits/0/relay/contactFrom | own device
                    'groundM': 0.3            | 'groundM': 0.3, 'contactFrom': 'lamp' | /circuits/0/relay/contactFrom | one feed
                    'kind': 'pump'            | 'kind': 'heater'             | /circuits/0/loads/0/kind      | resistive
                    'amps': 5.2               | 'amps': 5.2, 'watts': 60     | /circuits/0/loads/0           | not both
                    'amps': 5.2,              |                              | /circuits/0/loads/0           | not neither
                    'amps': 5.2               | 'amps': '5,2'                | /circuits/0/loads/0/amps      | number
                    'watts': 24               | 'watts': 0                   | /circuits/1/loads/0/watts     | above 0
                    'watts': 24               | 'watts': 24, 'wats': 24      | /circuits/1/loads/0/wats      | allowed here: title
                    'ratedV': 13.5            | 'ratedV': 0                  | /circuits/0/loads/0/ratedV    | from 1
                    'count': 2                | 'count': 0                   | /circuits/0/loads/0/count     | whole
                    'multiple': 6             | 'multiple': 0.5              | /circuits/0/loads/0/inrush/multiple | from 1
                    , 'ms': 200               |                              | /circuits/0/loads/0/inrush/ms | missing
                    'duty': 'momentary'       | 'duty': 'short'              | /circuits/0/loads/0/duty      | continuous
                    'branchM': 0.2            | 'branchM': -1                | /circuits/0/loads/0/branchM   | from 0
                    [{'kind': 'led', 'watts': 24}] | []                      | /circuits/1/loads             | 1 to 50
                    [{'kind': 'led', 'watts': 24}] | [7]                     | /circuits/1/loads/0           | object
                    'fromFeedM': 0.4          | 'fromFeedM': 1000            | /locations/0/fromFeedM        | to 100
                    'wireFamily': 'metric-thin' | 'wireFamily': 3            | /choices/wireFamily           | text
                    'lockingWedge': false     | 'lockingWedge': 0            | /choices/lockingWedge         | true or false
                    'cutStepMm': 5            | 'cutStepMm': 0               | /choices/cutStepMm            | from 1
                    'pigtailMm': 160          | 'pigtailMm': 0               | /choices/pigtailMm            | from 1
                    'sparePositions': 1       | 'sparePositions': 1, 'sparePositions': 2 | /choices/sparePositions | twice
                    """)
    void rejectsAFaultyField(String part, String instead, String pointer, String word) {
        JobReading reading = read(wholeWith(part, instead == null ? "" : instead));
        assertThat(reading.problems())
                .singleElement()
                .satisfies(
                        problem -> {
                            assertThat(problem.pointer()).isEqualTo(pointer);
                            assertThat(problem.detail().english()).contains(word);
                        });
    }

    @Test
    void rejectsAllFaultsAtOnce() {
        String json =
                WHOLE.replace("'nominalV': 12", "'nominalV': 13")
                        .replace("'runM': 1.1", "'runM': 'far'")
                        .replace("'feed': 'sw'", "'feed': 'none'")
                        .replace("'watts': 24", "'watts': 24, 'colour': 'RD'")
                        .replace("'cutStepMm': 5", "'cutStep': 5");
        assertThat(read(json).problems())
                .extracting(JobProblem::pointer)
                .containsExactlyInAnyOrder(
                        "/supply/nominalV",
                        "/circuits/0/runM",
                        "/circuits/1/loads/0/colour",
                        "/choices/cutStep",
                        "/circuits/1/feed");
        assertThatExceptionOfType(MalformedJobException.class).isThrownBy(read(json)::getJob);
    }

    @Test
    void rejectsAFeedNamedLikeTheController() {
        String json = WHOLE.replace("'id': 'bat'", "'id': 'controller'");
        assertThat(read(json.replace("'bat'", "'controller'")).problems())
                .extracting(JobProblem::pointer)
                .containsExactly("/feeds/0/id");
    }

    @Test
    void explainsAFaultyIdOnce() {
        assertThat(
                        read(WHOLE.replace("'id': 'bat'", "'id': 'b t'").replace("'bat'", "'b t'"))
                                .problems())
                .extracting(JobProblem::pointer)
                .containsExactly("/feeds/0/id", "/circuits/0/feed");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "{'a':1}}", "[1,", "{'a': NaN}", "nonsense", "{'a':'\n'}"})
    void rejectsWhatIsNoJson(String text) {
        assertThatExceptionOfType(MalformedJobException.class)
                .isThrownBy(() -> read(text))
                .satisfies(
                        malformed ->
                                assertThat(malformed.problems())
                                        .singleElement()
                                        .satisfies(
                                                problem -> {
                                                    assertThat(problem.pointer()).isEmpty();
                                                    assertThat(problem.detail().english())
                                                            .containsAnyOf(
                                                                    "line 1, column",
                                                                    "line 2, column",
                                                                    "empty")
                                                            .doesNotContain(
                                                                    "tools.jackson", "Source");
                                                }));
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "7", "'text'", "null", "true"})
    void rejectsADocumentThatIsNoObject(String json) {
        assertThat(read(json).problems())
                .singleElement()
                .satisfies(
                        problem ->
                                assertThat(problem.detail().english())
                                        .contains("must be an object"));
    }

    @Test
    void rejectsMoreCircuitsThanAJobMayHave() {
        String circuit = "{'id':'c%d','feed':'bat','runM':1,'loads':[{'kind':'led','watts':1}]}";
        StringBuilder circuits = new StringBuilder();
        for (int i = 0; i <= 400; i++) {
            circuits.append(i == 0 ? "" : ",").append(circuit.formatted(i));
        }
        String json =
                "{'reference':'R','supply':{'nominalV':12},'feeds':[{'id':'bat','terminal':'30',"
                        + "'lengthM':1,'sourceDistanceM':0}],'circuits':["
                        + circuits
                        + "]}";
        assertThat(read(json).problems())
                .singleElement()
                .satisfies(
                        problem -> {
                            assertThat(problem.pointer()).isEqualTo("/circuits");
                            assertThat(problem.detail().english())
                                    .isEqualTo("must hold 0 to 400 circuits, not 401");
                        });
    }
}
