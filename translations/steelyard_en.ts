<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>AheadText</name>
    <message numerus="yes">
        <source>The typical error of a session is %1 % (from %n pair(s) of sessions); since %2 only a capacity below %3 or above %4 %5 is a change that means something.</source>
        <translation>
            <numerusform>The typical error of a session is %1 % (from %n pair of sessions); since %2 only a capacity below %3 or above %4 %5 is a change that means something.</numerusform>
            <numerusform>The typical error of a session is %1 % (from %n pairs of sessions); since %2 only a capacity below %3 or above %4 %5 is a change that means something.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>AthleteText</name>
    <message numerus="yes">
        <source>The name is longer than %n characters; shorten it.</source>
        <translation>
            <numerusform>The name is longer than %n characters; shorten it.</numerusform>
            <numerusform>The name is longer than %n characters; shorten it.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>A tag has at most %n characters; shorten it.</source>
        <translation>
            <numerusform>A tag has at most %n characters; shorten it.</numerusform>
            <numerusform>A tag has at most %n characters; shorten it.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>A lifter has at most %n tags; leave some out.</source>
        <translation>
            <numerusform>A lifter has at most %n tags; leave some out.</numerusform>
            <numerusform>A lifter has at most %n tags; leave some out.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>AttentionText</name>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>and %n more</numerusform>
            <numerusform>and %n more</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BandThenLoadText</name>
    <message numerus="yes">
        <source>The step is large for this load: expect about %n repetition(s) fewer.</source>
        <translation>
            <numerusform>The step is large for this load: expect about %n repetition fewer.</numerusform>
            <numerusform>The step is large for this load: expect about %n repetitions fewer.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Every set reached %n counted repetition(s): take the next load and start from the low end of the band.</source>
        <translation>
            <numerusform>Every set reached %n counted repetition: take the next load and start from the low end of the band.</numerusform>
            <numerusform>Every set reached %n counted repetitions: take the next load and start from the low end of the band.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Most sets stayed under %n counted repetition(s) twice running: one step down brings them back into the band.</source>
        <translation>
            <numerusform>Most sets stayed under %n counted repetition twice running: one step down brings them back into the band.</numerusform>
            <numerusform>Most sets stayed under %n counted repetitions twice running: one step down brings them back into the band.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BlockDeedText</name>
    <message numerus="yes">
        <source>%n lift(s)</source>
        <translation>
            <numerusform>%n lift</numerusform>
            <numerusform>%n lifts</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BlockDoseText</name>
    <message numerus="yes">
        <source>%n set(s) of one lift are the most.</source>
        <translation>
            <numerusform>%n set of one lift is the most.</numerusform>
            <numerusform>%n sets of one lift are the most.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BlockLimitText</name>
    <message numerus="yes">
        <source>Only %n day(s) after the last session of: %1.</source>
        <translation>
            <numerusform>Only %n day after the last session of: %1.</numerusform>
            <numerusform>Only %n days after the last session of: %1.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BlockPageText</name>
    <message numerus="yes">
        <source>%1, from %2, %n week(s)</source>
        <translation>
            <numerusform>%1, from %2, %n week</numerusform>
            <numerusform>%1, from %2, %n weeks</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lift(s)</source>
        <translation>
            <numerusform>%n lift</numerusform>
            <numerusform>%n lifts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1, %n week(s)</source>
        <translation>
            <numerusform>%1, %n week</numerusform>
            <numerusform>%1, %n weeks</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BlockWeekText</name>
    <message numerus="yes">
        <source>%n week(s) are the most that one block has.</source>
        <translation>
            <numerusform>%n week is the most that one block has.</numerusform>
            <numerusform>%n weeks are the most that one block has.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BodyText</name>
    <message numerus="yes">
        <source>Body mass and measurements on %n day(s).</source>
        <translation>
            <numerusform>Body mass and measurements on %n day.</numerusform>
            <numerusform>Body mass and measurements on %n days.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BulkEditText</name>
    <message numerus="yes">
        <source>move %n set(s) to another line</source>
        <translation>
            <numerusform>move %n set to another line</numerusform>
            <numerusform>move %n sets to another line</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>shift %n session(s)</source>
        <translation>
            <numerusform>shift %n session</numerusform>
            <numerusform>shift %n sessions</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BulkText</name>
    <message numerus="yes">
        <source>And %n more.</source>
        <translation>
            <numerusform>And %n more.</numerusform>
            <numerusform>And %n more.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s)</source>
        <translation>
            <numerusform>%n session</numerusform>
            <numerusform>%n sessions</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s)</source>
        <translation>
            <numerusform>%n set</numerusform>
            <numerusform>%n sets</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>To the other line: %n set(s)</source>
        <translation>
            <numerusform>To the other line: %n set</numerusform>
            <numerusform>To the other line: %n sets</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>of %n session(s).</source>
        <translation>
            <numerusform>of %n session.</numerusform>
            <numerusform>of %n sessions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>With %n rating(s).</source>
        <translation>
            <numerusform>With %n rating.</numerusform>
            <numerusform>With %n ratings.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>And with %n decision(s), because nothing stays behind.</source>
        <translation>
            <numerusform>And with %n decision, because nothing stays behind.</numerusform>
            <numerusform>And with %n decisions, because nothing stays behind.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>To another day: %n session(s).</source>
        <translation>
            <numerusform>To another day: %n session.</numerusform>
            <numerusform>To another day: %n sessions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>To be called so: %n lift line(s)</source>
        <translation>
            <numerusform>To be called so: %n lift line</numerusform>
            <numerusform>To be called so: %n lift lines</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>of %n lifter(s); histories stay as they are.</source>
        <translation>
            <numerusform>of %n lifter; histories stay as they are.</numerusform>
            <numerusform>of %n lifters; histories stay as they are.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in %n planned slot(s)</source>
        <translation>
            <numerusform>in %n planned slot</numerusform>
            <numerusform>in %n planned slots</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CompareText</name>
    <message numerus="yes">
        <source>%n line(s), each 100 % on %1.</source>
        <translation>
            <numerusform>%n line, each 100 % on %1.</numerusform>
            <numerusform>%n lines, each 100 % on %1.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ConsentText</name>
    <message numerus="yes">
        <source>The note on the consent is longer than %n characters; shorten it.</source>
        <translation>
            <numerusform>The note on the consent is longer than %n characters; shorten it.</numerusform>
            <numerusform>The note on the consent is longer than %n characters; shorten it.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>DayText</name>
    <message numerus="yes">
        <source>%n bar(s) of %1</source>
        <translation>
            <numerusform>%n bar of %1</numerusform>
            <numerusform>%n bars of %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n pair(s) of %1 discs</source>
        <translation>
            <numerusform>%n pair of %1 discs</numerusform>
            <numerusform>%n pairs of %1 discs</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n pair(s) of %1 dumbbells</source>
        <translation>
            <numerusform>%n pair of %1 dumbbells</numerusform>
            <numerusform>%n pairs of %1 dumbbells</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lifter(s)</source>
        <translation>
            <numerusform>%n lifter</numerusform>
            <numerusform>%n lifters</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>DeloadDueText</name>
    <message numerus="yes">
        <source>%n week(s) of training running without an easier one.</source>
        <translation>
            <numerusform>%n week of training running without an easier one.</numerusform>
            <numerusform>%n weeks of training running without an easier one.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>DoneText</name>
    <message numerus="yes">
        <source>%1 of %n session(s)</source>
        <translation>
            <numerusform>%1 of %n session</numerusform>
            <numerusform>%1 of %n sessions</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of %n set(s)</source>
        <translation>
            <numerusform>%1 of %n set</numerusform>
            <numerusform>%1 of %n sets</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n of them on target</source>
        <translation>
            <numerusform>%n of them on target</numerusform>
            <numerusform>%n of them on target</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>EarlierTrialText</name>
    <message numerus="yes">
        <source>%n trial(s) of %1 against %2 contradict each other; they are not put together.</source>
        <translation>
            <numerusform>%n trial of %1 against %2 contradicts itself; they are not put together.</numerusform>
            <numerusform>%n trials of %1 against %2 contradict each other; they are not put together.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n trial(s) of %1 against %2 together: %3 points of 10 (90 % interval %4 to %5).</source>
        <translation>
            <numerusform>%n trial of %1 against %2 together: %3 points of 10 (90 % interval %4 to %5).</numerusform>
            <numerusform>%n trials of %1 against %2 together: %3 points of 10 (90 % interval %4 to %5).</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>EditText</name>
    <message numerus="yes">
        <source>add block %1 for %n lifter(s)</source>
        <translation>
            <numerusform>add block %1 for %n lifter</numerusform>
            <numerusform>add block %1 for %n lifters</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>EffortLowText</name>
    <message numerus="yes">
        <source>%n lift(s) ended far from failure for several sessions.</source>
        <translation>
            <numerusform>%n lift ended far from failure for several sessions.</numerusform>
            <numerusform>%n lifts ended far from failure for several sessions.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>EffortUnknownText</name>
    <message numerus="yes">
        <source>Effort is missing on most sets of %n lift(s); more repetitions may only mean more effort.</source>
        <translation>
            <numerusform>Effort is missing on most sets of %n lift; more repetitions may only mean more effort.</numerusform>
            <numerusform>Effort is missing on most sets of %n lifts; more repetitions may only mean more effort.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>FilmCheckText</name>
    <message numerus="yes">
        <source>Please film a set of each lift: %n of them did better than the record explains.</source>
        <translation>
            <numerusform>Please film a set of each lift: %n of them did better than the record explains.</numerusform>
            <numerusform>Please film a set of each lift: %n of them did better than the record explains.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ForecastCommandText</name>
    <message numerus="yes">
        <source>For %n repetition(s): %1; the gym&apos;s nearest is %2.</source>
        <translation>
            <numerusform>For %n repetition: %1; the gym&apos;s nearest is %2.</numerusform>
            <numerusform>For %n repetitions: %1; the gym&apos;s nearest is %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>For %n repetition(s): %1. No gym is known to round it to.</source>
        <translation>
            <numerusform>For %n repetition: %1. No gym is known to round it to.</numerusform>
            <numerusform>For %n repetitions: %1. No gym is known to round it to.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>FormatText</name>
    <message numerus="yes">
        <source>%n day(s) ago</source>
        <translation>
            <numerusform>%n day ago</numerusform>
            <numerusform>%n days ago</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in %n day(s)</source>
        <translation>
            <numerusform>in %n day</numerusform>
            <numerusform>in %n days</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n week(s) ago</source>
        <translation>
            <numerusform>%n week ago</numerusform>
            <numerusform>%n weeks ago</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in %n week(s)</source>
        <translation>
            <numerusform>in %n week</numerusform>
            <numerusform>in %n weeks</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n month(s) ago</source>
        <translation>
            <numerusform>%n month ago</numerusform>
            <numerusform>%n months ago</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in %n month(s)</source>
        <translation>
            <numerusform>in %n month</numerusform>
            <numerusform>in %n months</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>LearnCommandText</name>
    <message numerus="yes">
        <source>Of the %n line(s) kept apart: %1, before %2.</source>
        <translation>
            <numerusform>Of the %n line kept apart: %1, before %2.</numerusform>
            <numerusform>Of the %n lines kept apart: %1, before %2.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>LearnText</name>
    <message numerus="yes">
        <source>Learned from %n lift line(s): readings now rest on version %1 of the numbers.</source>
        <translation>
            <numerusform>Learned from %n lift line: readings now rest on version %1 of the numbers.</numerusform>
            <numerusform>Learned from %n lift lines: readings now rest on version %1 of the numbers.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Too little to learn from: %n lift line(s) with enough weeks in the last year, and %1 are needed. The numbers stay as they are.</source>
        <translation>
            <numerusform>Too little to learn from: %n lift line with enough weeks in the last year, and %1 are needed. The numbers stay as they are.</numerusform>
            <numerusform>Too little to learn from: %n lift lines with enough weeks in the last year, and %1 are needed. The numbers stay as they are.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Other numbers suit %n lift line(s), but not the ones kept apart to check them. The numbers stay as they are.</source>
        <translation>
            <numerusform>Other numbers suit %n lift line, but not the ones kept apart to check them. The numbers stay as they are.</numerusform>
            <numerusform>Other numbers suit %n lift lines, but not the ones kept apart to check them. The numbers stay as they are.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The numbers suit the %n lift line(s) as they are.</source>
        <translation>
            <numerusform>The numbers suit the %n lift line as they are.</numerusform>
            <numerusform>The numbers suit the %n lift lines as they are.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>LibraryText</name>
    <message numerus="yes">
        <source>The name is longer than %n characters; shorten it.</source>
        <translation>
            <numerusform>The name is longer than %n characters; shorten it.</numerusform>
            <numerusform>The name is longer than %n characters; shorten it.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>LiftText</name>
    <message numerus="yes">
        <source>%n set(s) since %1</source>
        <translation>
            <numerusform>%n set since %1</numerusform>
            <numerusform>%n sets since %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>LoadByStepText</name>
    <message numerus="yes">
        <source>Most sets stayed under %n counted repetition(s) twice running: one step down.</source>
        <translation>
            <numerusform>Most sets stayed under %n counted repetition twice running: one step down.</numerusform>
            <numerusform>Most sets stayed under %n counted repetitions twice running: one step down.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Same load until the last set is two repetitions over %n in two sessions running.</source>
        <translation>
            <numerusform>Same load until the last set is two repetitions over %n in two sessions running.</numerusform>
            <numerusform>Same load until the last set is two repetitions over %n in two sessions running.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>LogbookImportText</name>
    <message numerus="yes">
        <source>import of %n row(s)</source>
        <translation>
            <numerusform>import of %n row</numerusform>
            <numerusform>import of %n rows</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>LogbookText</name>
    <message numerus="yes">
        <source>Off-standard repetitions are part of the set&apos;s %n repetition(s).</source>
        <translation>
            <numerusform>Off-standard repetitions are part of the set&apos;s %n repetition.</numerusform>
            <numerusform>Off-standard repetitions are part of the set&apos;s %n repetitions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The note is longer than %n characters; shorten it.</source>
        <translation>
            <numerusform>The note is longer than %n characters; shorten it.</numerusform>
            <numerusform>The note is longer than %n characters; shorten it.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PaperProgramText</name>
    <message numerus="yes">
        <source>Nobody is expected from %1 for %n day(s): there is no planned day, and nobody trained on that weekday in two of the last four weeks. Name a lifter with --athlete to get a sheet all the same.</source>
        <translation>
            <numerusform>Nobody is expected from %1 for %n day: there is no planned day, and nobody trained on that weekday in two of the last four weeks. Name a lifter with --athlete to get a sheet all the same.</numerusform>
            <numerusform>Nobody is expected from %1 for %n days: there is no planned day, and nobody trained on that weekday in two of the last four weeks. Name a lifter with --athlete to get a sheet all the same.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n sheet(s) in %1</source>
        <translation>
            <numerusform>%n sheet in %1</numerusform>
            <numerusform>%n sheets in %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PlanText</name>
    <message numerus="yes">
        <source>%n set(s) of %1</source>
        <translation>
            <numerusform>%n set of %1</numerusform>
            <numerusform>%n sets of %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In “%1”, %n slot(s) change:</source>
        <translation>
            <numerusform>In “%1”, %n slot changes:</numerusform>
            <numerusform>In “%1”, %n slots change:</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ProgressText</name>
    <message numerus="yes">
        <source>%n session(s).</source>
        <translation>
            <numerusform>%n session.</numerusform>
            <numerusform>%n sessions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n not watched.</source>
        <translation>
            <numerusform>%n not watched.</numerusform>
            <numerusform>%n not watched.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n off standard and left out of the trend.</source>
        <translation>
            <numerusform>%n off standard and left out of the trend.</numerusform>
            <numerusform>%n off standard and left out of the trend.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n at a deload.</source>
        <translation>
            <numerusform>%n at a deload.</numerusform>
            <numerusform>%n at a deload.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n far beyond the others, drawn at the edge with its value.</source>
        <translation>
            <numerusform>%n far beyond the others, drawn at the edge with its value.</numerusform>
            <numerusform>%n far beyond the others, drawn at the edge with its value.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ProgressionSupportText</name>
    <message numerus="yes">
        <source>Same load; likely enough in the first set: %n counted repetition(s), more than last time.</source>
        <translation>
            <numerusform>Same load; likely enough in the first set: %n counted repetition, more than last time.</numerusform>
            <numerusform>Same load; likely enough in the first set: %n counted repetitions, more than last time.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Same load; likely enough in the first set: %n counted repetition(s).</source>
        <translation>
            <numerusform>Same load; likely enough in the first set: %n counted repetition.</numerusform>
            <numerusform>Same load; likely enough in the first set: %n counted repetitions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Take the next load; likely enough there in the first set: %n counted repetition(s).</source>
        <translation>
            <numerusform>Take the next load; likely enough there in the first set: %n counted repetition.</numerusform>
            <numerusform>Take the next load; likely enough there in the first set: %n counted repetitions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The last load would likely bring fewer than %n counted repetition(s): a lighter one fits.</source>
        <translation>
            <numerusform>The last load would likely bring fewer than %n counted repetition: a lighter one fits.</numerusform>
            <numerusform>The last load would likely bring fewer than %n counted repetitions: a lighter one fits.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ProposalText</name>
    <message numerus="yes">
        <source>Done in %n session(s) of the last half year.</source>
        <translation>
            <numerusform>Done in %n session of the last half year.</numerusform>
            <numerusform>Done in %n sessions of the last half year.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RatingsText</name>
    <message numerus="yes">
        <source>%n session(s).</source>
        <translation>
            <numerusform>%n session.</numerusform>
            <numerusform>%n sessions.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ReadingText</name>
    <message numerus="yes">
        <source>Only %n session(s) so far; a trend needs at least %1.</source>
        <translation>
            <numerusform>Only %n session so far; a trend needs at least %1.</numerusform>
            <numerusform>Only %n sessions so far; a trend needs at least %1.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) in the last %1 weeks; the record is too old to say where the lift stands.</source>
        <translation>
            <numerusform>%n session in the last %1 weeks; the record is too old to say where the lift stands.</numerusform>
            <numerusform>%n sessions in the last %1 weeks; the record is too old to say where the lift stands.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Back after %n day(s) without this lift; the first weeks are not read as a trend.</source>
        <translation>
            <numerusform>Back after %n day without this lift; the first weeks are not read as a trend.</numerusform>
            <numerusform>Back after %n days without this lift; the first weeks are not read as a trend.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>A straight line through the last %n session(s) says %1 % a week.</source>
        <translation>
            <numerusform>A straight line through the last %n session says %1 % a week.</numerusform>
            <numerusform>A straight line through the last %n sessions says %1 % a week.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No visible change. At this lifter&apos;s usual pace and rate of training, telling slow progress from a stall takes about %n week(s), longer than a block.</source>
        <translation>
            <numerusform>No visible change. At this lifter&apos;s usual pace and rate of training, telling slow progress from a stall takes about %n week, longer than a block.</numerusform>
            <numerusform>No visible change. At this lifter&apos;s usual pace and rate of training, telling slow progress from a stall takes about %n weeks, longer than a block.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RepetitionEditText</name>
    <message numerus="yes">
        <source>record the repetitions of %n set(s)</source>
        <translation>
            <numerusform>record the repetitions of %n set</numerusform>
            <numerusform>record the repetitions of %n sets</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RestoreCommandText</name>
    <message numerus="yes">
        <source>This backup is not sound: %n finding(s).</source>
        <translation>
            <numerusform>This backup is not sound: %n finding.</numerusform>
            <numerusform>This backup is not sound: %n findings.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RestoreText</name>
    <message numerus="yes">
        <source>“%1” isn&apos;t sound, so the book was left as it is: %n finding(s). Take another backup.</source>
        <translation>
            <numerusform>“%1” isn&apos;t sound, so the book was left as it is: %n finding. Take another backup.</numerusform>
            <numerusform>“%1” isn&apos;t sound, so the book was left as it is: %n findings. Take another backup.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ReviewPrintText</name>
    <message numerus="yes">
        <source>Saved the review of %n lifter(s) in %1</source>
        <translation>
            <numerusform>Saved the review of %n lifter in %1</numerusform>
            <numerusform>Saved the review of %n lifters in %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ReviewWords</name>
    <message numerus="yes">
        <source>Answered and resting: %n.</source>
        <translation>
            <numerusform>Answered and resting: %n.</numerusform>
            <numerusform>Answered and resting: %n.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Review as of %1: %n lifter(s), worst first</source>
        <translation>
            <numerusform>Review as of %1: %n lifter, worst first</numerusform>
            <numerusform>Review as of %1: %n lifters, worst first</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SalvageText</name>
    <message numerus="yes">
        <source>%n name(s) could not be read and begin with “Recovered”; rename them when you know what they are</source>
        <translation>
            <numerusform>%n name could not be read and begins with “Recovered”; rename it when you know what it is</numerusform>
            <numerusform>%n names could not be read and begin with “Recovered”; rename them when you know what they are</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SetNotationText</name>
    <message numerus="yes">
        <source>A mark counts from 1 to the set&apos;s %n repetition(s).</source>
        <translation>
            <numerusform>A mark counts from 1 to the set&apos;s %n repetition.</numerusform>
            <numerusform>A mark counts from 1 to the set&apos;s %n repetitions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>This is a whole number, at most the set&apos;s %n repetition(s).</source>
        <translation>
            <numerusform>This is a whole number, at most the set&apos;s %n repetition.</numerusform>
            <numerusform>This is a whole number, at most the set&apos;s %n repetitions.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SetOutlookText</name>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>and %n more</numerusform>
            <numerusform>and %n more</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SetText</name>
    <message numerus="yes">
        <source>%n off standard</source>
        <translation>
            <numerusform>%n off standard</numerusform>
            <numerusform>%n off standard</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SetsOutOfBandText</name>
    <message numerus="yes">
        <source>Sets a week over the last %n week(s): %1.</source>
        <translation>
            <numerusform>Sets a week over the last %n week: %1.</numerusform>
            <numerusform>Sets a week over the last %n weeks: %1.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SpilloverFatigueText</name>
    <message numerus="yes">
        <source>%n time(s) in the last weeks %1 shortly before %2.</source>
        <translation>
            <numerusform>%n time in the last weeks %1 shortly before %2.</numerusform>
            <numerusform>%n times in the last weeks %1 shortly before %2.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>StalledText</name>
    <message numerus="yes">
        <source>%1: no clear improvement for %n week(s).</source>
        <translation>
            <numerusform>%1: no clear improvement for %n week.</numerusform>
            <numerusform>%1: no clear improvement for %n weeks.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TimeText</name>
    <message numerus="yes">
        <source>%1: %2 to %3, %n week(s)</source>
        <translation>
            <numerusform>%1: %2 to %3, %n week</numerusform>
            <numerusform>%1: %2 to %3, %n weeks</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s) off</source>
        <translation>
            <numerusform>%n day off</numerusform>
            <numerusform>%n days off</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No session of this line between %1 and %2: %n day(s)</source>
        <translation>
            <numerusform>No session of this line between %1 and %2: %n day</numerusform>
            <numerusform>No session of this line between %1 and %2: %n days</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrainingText</name>
    <message numerus="yes">
        <source>%n session(s)</source>
        <translation>
            <numerusform>%n session</numerusform>
            <numerusform>%n sessions</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s)</source>
        <translation>
            <numerusform>%n set</numerusform>
            <numerusform>%n sets</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n week(s) of training.</source>
        <translation>
            <numerusform>%n week of training.</numerusform>
            <numerusform>%n weeks of training.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %n of them the effort of too many sets is not known.</source>
        <translation>
            <numerusform>In %n of them the effort of too many sets is not known.</numerusform>
            <numerusform>In %n of them the effort of too many sets is not known.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n more muscle(s) in the table.</source>
        <translation>
            <numerusform>%n more muscle in the table.</numerusform>
            <numerusform>%n more muscles in the table.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialCommandText</name>
    <message numerus="yes">
        <source>%n session(s) stand in no planned day yet.</source>
        <translation>
            <numerusform>%n session stands in no planned day yet.</numerusform>
            <numerusform>%n sessions stand in no planned day yet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 has %n trial(s).</source>
        <translation>
            <numerusform>%1 has %n trial.</numerusform>
            <numerusform>%1 has %n trials.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialCourseText</name>
    <message numerus="yes">
        <source>%n session(s) so far.</source>
        <translation>
            <numerusform>%n session so far.</numerusform>
            <numerusform>%n sessions so far.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialDaysText</name>
    <message numerus="yes">
        <source>At least %n day(s) lie between two sessions of this trial; the order they were drawn in stays.</source>
        <translation>
            <numerusform>At least %n day lies between two sessions of this trial; the order they were drawn in stays.</numerusform>
            <numerusform>At least %n days lie between two sessions of this trial; the order they were drawn in stays.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialDraftText</name>
    <message numerus="yes">
        <source>%n set(s)</source>
        <translation>
            <numerusform>%n set</numerusform>
            <numerusform>%n sets</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialPowerText</name>
    <message numerus="yes">
        <source>%n block(s)</source>
        <translation>
            <numerusform>%n block</numerusform>
            <numerusform>%n blocks</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialPreviewText</name>
    <message numerus="yes">
        <source>%n session(s), %1 to %2.</source>
        <translation>
            <numerusform>%n session, %1 to %2.</numerusform>
            <numerusform>%n sessions, %1 to %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) in the exercise’s place in the block.</source>
        <translation>
            <numerusform>%n session in the exercise’s place in the block.</numerusform>
            <numerusform>%n sessions in the exercise’s place in the block.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) on no planned day: the sheet of the day asks for the arm all the same.</source>
        <translation>
            <numerusform>%n session on no planned day: the sheet of the day asks for the arm all the same.</numerusform>
            <numerusform>%n sessions on no planned day: the sheet of the day asks for the arm all the same.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) in an easier or a test week, with the trial’s sets all the same.</source>
        <translation>
            <numerusform>%n session in an easier or a test week, with the trial’s sets all the same.</numerusform>
            <numerusform>%n sessions in an easier or a test week, with the trial’s sets all the same.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialRecordText</name>
    <message numerus="yes">
        <source>%n session(s) were done with another arm than the drawn one.</source>
        <translation>
            <numerusform>%n session was done with another arm than the drawn one.</numerusform>
            <numerusform>%n sessions were done with another arm than the drawn one.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) were missed.</source>
        <translation>
            <numerusform>%n session was missed.</numerusform>
            <numerusform>%n sessions were missed.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) were done later than drawn.</source>
        <translation>
            <numerusform>%n session was done later than drawn.</numerusform>
            <numerusform>%n sessions were done later than drawn.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) on an arm&apos;s lift stood outside the trial.</source>
        <translation>
            <numerusform>%n session on an arm&apos;s lift stood outside the trial.</numerusform>
            <numerusform>%n sessions on an arm&apos;s lift stood outside the trial.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) had another number of sets than planned.</source>
        <translation>
            <numerusform>%n session had another number of sets than planned.</numerusform>
            <numerusform>%n sessions had another number of sets than planned.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>After %n session(s) the muscle was trained again the next day, so soreness and weakness were left out.</source>
        <translation>
            <numerusform>After %n session the muscle was trained again the next day, so soreness and weakness were left out.</numerusform>
            <numerusform>After %n sessions the muscle was trained again the next day, so soreness and weakness were left out.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialText</name>
    <message numerus="yes">
        <source>%1 of %n block(s) whole.</source>
        <translation>
            <numerusform>%1 of %n block whole.</numerusform>
            <numerusform>%1 of %n blocks whole.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n rating(s) can still be asked for. %1.</source>
        <translation>
            <numerusform>%n rating can still be asked for. %1.</numerusform>
            <numerusform>%n ratings can still be asked for. %1.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 is out for discomfort since %2: %3 was rated %4 of 10 in %n session(s) running, and the trial’s limit is %5.</source>
        <translation>
            <numerusform>%1 is out for discomfort since %2: %3 was rated %4 of 10 in %n session running, and the trial’s limit is %5.</numerusform>
            <numerusform>%1 is out for discomfort since %2: %3 was rated %4 of 10 in %n sessions running, and the trial’s limit is %5.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>about %n more session(s)</source>
        <translation>
            <numerusform>about %n more session</numerusform>
            <numerusform>about %n more sessions</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n whole block(s)</source>
        <translation>
            <numerusform>%n whole block</numerusform>
            <numerusform>%n whole blocks</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialVerdictText</name>
    <message numerus="yes">
        <source>Needs about %n more session(s): %1 leads so far, not surely enough to say so.</source>
        <translation>
            <numerusform>Needs about %n more session: %1 leads so far, not surely enough to say so.</numerusform>
            <numerusform>Needs about %n more sessions: %1 leads so far, not surely enough to say so.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 is out: discomfort (%2) up to %3 of 10, at the limit or above in %n session(s) running.</source>
        <translation>
            <numerusform>%1 is out: discomfort (%2) up to %3 of 10, at the limit or above in %n session running.</numerusform>
            <numerusform>%1 is out: discomfort (%2) up to %3 of 10, at the limit or above in %n sessions running.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Says nothing yet: %n whole block(s) so far, and with fewer than %1 a difference would be chance as likely as not.</source>
        <translation>
            <numerusform>Says nothing yet: %n whole block so far, and with fewer than %1 a difference would be chance as likely as not.</numerusform>
            <numerusform>Says nothing yet: %n whole blocks so far, and with fewer than %1 a difference would be chance as likely as not.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n whole block(s) of %1.</source>
        <translation>
            <numerusform>%n whole block of %1.</numerusform>
            <numerusform>%n whole blocks of %1.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s) are left out, because a rating that is weighed is missing.</source>
        <translation>
            <numerusform>%n session is left out, because a rating that is weighed is missing.</numerusform>
            <numerusform>%n sessions are left out, because a rating that is weighed is missing.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The results were looked at %n time(s) while the trial ran. The demand on “prefer” allows for a look after every block; it can&apos;t allow for ratings that were given with the results in mind.</source>
        <translation>
            <numerusform>The results were looked at %n time while the trial ran. The demand on “prefer” allows for a look after every block; it can&apos;t allow for ratings that were given with the results in mind.</numerusform>
            <numerusform>The results were looked at %n times while the trial ran. The demand on “prefer” allows for a look after every block; it can&apos;t allow for ratings that were given with the results in mind.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialWinsText</name>
    <message numerus="yes">
        <source>%1: preferred in %2 of %n trial(s)</source>
        <translation>
            <numerusform>%1: preferred in %2 of %n trial</numerusform>
            <numerusform>%1: preferred in %2 of %n trials</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>UnsupportedJumpText</name>
    <message numerus="yes">
        <source>only %n repetition(s) counted at the limit</source>
        <translation>
            <numerusform>only %n repetition counted at the limit</numerusform>
            <numerusform>only %n repetitions counted at the limit</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>UnwatchedText</name>
    <message numerus="yes">
        <source>%1: nobody watched the last %n session(s).</source>
        <translation>
            <numerusform>%1: nobody watched the last %n session.</numerusform>
            <numerusform>%1: nobody watched the last %n sessions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Nobody has watched most of this lifter&apos;s lifts lately (%n of them).</source>
        <translation>
            <numerusform>Nobody has watched most of this lifter&apos;s lifts lately (%n of them).</numerusform>
            <numerusform>Nobody has watched most of this lifter&apos;s lifts lately (%n of them).</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>VerifyCommandText</name>
    <message numerus="yes">
        <source>This book is not sound: %n finding(s). Make a copy, then restore a backup.</source>
        <translation>
            <numerusform>This book is not sound: %n finding. Make a copy, then restore a backup.</numerusform>
            <numerusform>This book is not sound: %n findings. Make a copy, then restore a backup.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>WholeLifterText</name>
    <message numerus="yes">
        <source>%n lift(s) are falling together, by about %1 % a week, which points to one reason behind all of them: sleep, food, illness, stress or too much work.</source>
        <translation>
            <numerusform>%n lift are falling together, by about %1 % a week, which points to one reason behind all of them: sleep, food, illness, stress or too much work.</numerusform>
            <numerusform>%n lifts are falling together, by about %1 % a week, which points to one reason behind all of them: sleep, food, illness, stress or too much work.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>WhyText</name>
    <message numerus="yes">
        <source>%n set(s) together</source>
        <translation>
            <numerusform>%n set</numerusform>
            <numerusform>%n sets together</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::BlockForMany</name>
    <message numerus="yes">
        <source>For %n lifter(s). Enter shows what each would get; nothing is written before.</source>
        <translation>
            <numerusform>For %n lifter. Enter shows what each would get; nothing is written before.</numerusform>
            <numerusform>For %n lifters. Enter shows what each would get; nothing is written before.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Fitting it to %n lifter(s)…</source>
        <translation>
            <numerusform>Fitting it to %n lifter…</numerusform>
            <numerusform>Fitting it to %n lifters…</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>For %n lifter(s) something differs, as it says below. Ctrl+Enter writes the blocks, one step of the history.</source>
        <translation>
            <numerusform>For %n lifter something differs, as it says below. Ctrl+Enter writes the blocks, one step of the history.</numerusform>
            <numerusform>For %n lifters something differs, as it says below. Ctrl+Enter writes the blocks, one step of the history.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lifter(s) have the block. Ctrl+Z takes it back whole.</source>
        <translation>
            <numerusform>%n lifter has the block. Ctrl+Z takes it back whole.</numerusform>
            <numerusform>%n lifters have the block. Ctrl+Z takes it back whole.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::BlockLoads</name>
    <message numerus="yes">
        <source>%n load(s) would be written otherwise today. Space ticks, Shift+L keeps the written one for good, Enter writes that.</source>
        <translation>
            <numerusform>%n load would be written otherwise today. Space ticks, Shift+L keeps the written one for good, Enter writes that.</numerusform>
            <numerusform>%n loads would be written otherwise today. Space ticks, Shift+L keeps the written one for good, Enter writes that.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n load(s) written.</source>
        <translation>
            <numerusform>%n load written.</numerusform>
            <numerusform>%n loads written.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n load(s) kept as written.</source>
        <translation>
            <numerusform>%n load kept as written.</numerusform>
            <numerusform>%n loads kept as written.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::BlockPage</name>
    <message numerus="yes">
        <source>%n lift(s) copied; Ctrl+V puts them where the cursor is.</source>
        <translation>
            <numerusform>%n lift copied; Ctrl+V puts it where the cursor is.</numerusform>
            <numerusform>%n lifts copied; Ctrl+V puts them where the cursor is.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::BlockProposed</name>
    <message numerus="yes">
        <source>%n week(s) from %1: the week that repeats. Enter takes it over; everything can be changed afterwards.</source>
        <translation>
            <numerusform>%n week from %1: the week that repeats. Enter takes it over; everything can be changed afterwards.</numerusform>
            <numerusform>%n weeks from %1: the week that repeats. Enter takes it over; everything can be changed afterwards.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::BlockSide</name>
    <message numerus="yes">
        <source>%n limit(s) broken in this week:</source>
        <translation>
            <numerusform>%n limit broken in this week:</numerusform>
            <numerusform>%n limits broken in this week:</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::CompareView</name>
    <message numerus="yes">
        <source>%1, %n session(s)</source>
        <translation>
            <numerusform>%1, %n session</numerusform>
            <numerusform>%1, %n sessions</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::CurveView</name>
    <message numerus="yes">
        <source>Sets of the last %n week(s), as they would be today: moved by what strength changed since, and by what earlier sets of the session cost.</source>
        <translation>
            <numerusform>Sets of the last %n week, as they would be today: moved by what strength changed since, and by what earlier sets of the session cost.</numerusform>
            <numerusform>Sets of the last %n weeks, as they would be today: moved by what strength changed since, and by what earlier sets of the session cost.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No curve can be said of this line yet. It takes %n set(s) near failure (up to four in reserve) in half a year, at loads that differ; then repetitions to failure stand here against load, beside the published curve.</source>
        <translation>
            <numerusform>No curve can be said of this line yet. It takes %n set near failure (up to four in reserve) in half a year, at loads that differ; then repetitions to failure stand here against load, beside the published curve.</numerusform>
            <numerusform>No curve can be said of this line yet. It takes %n sets near failure (up to four in reserve) in half a year, at loads that differ; then repetitions to failure stand here against load, beside the published curve.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::DecisionModel</name>
    <message numerus="yes">
        <source>%n session(s)</source>
        <translation>
            <numerusform>%n session</numerusform>
            <numerusform>%n sessions</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::FlagList</name>
    <message numerus="yes">
        <source>%n flag(s) answered</source>
        <translation>
            <numerusform>%n flag answered</numerusform>
            <numerusform>%n flags answered</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::FlagView</name>
    <message numerus="yes">
        <source>and %n earlier</source>
        <translation>
            <numerusform>and %n earlier</numerusform>
            <numerusform>and %n earlier</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::FloorPage</name>
    <message numerus="yes">
        <source>%n exercise(s)</source>
        <translation>
            <numerusform>%n exercise</numerusform>
            <numerusform>%n exercises</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n sheet(s). Ticked ones are printed.</source>
        <translation>
            <numerusform>%n sheet. Ticked ones are printed.</numerusform>
            <numerusform>%n sheets. Ticked ones are printed.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s) keyed</source>
        <translation>
            <numerusform>%n set keyed</numerusform>
            <numerusform>%n sets keyed</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::ImportPage</name>
    <message numerus="yes">
        <source>… and %n more.</source>
        <translation>
            <numerusform>… and %n more.</numerusform>
            <numerusform>… and %n more.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s) came in. Undo takes them out again.</source>
        <translation>
            <numerusform>%n set came in. Undo takes them out again.</numerusform>
            <numerusform>%n sets came in. Undo takes them out again.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) set aside: %1</source>
        <translation>
            <numerusform>%n row set aside: %1</numerusform>
            <numerusform>%n rows set aside: %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Discomfort of %n lifter(s) is left out. &amp;They agreed that it is kept: bring it in, too</source>
        <translation>
            <numerusform>Discomfort of %n lifter is left out. &amp;They agreed that it is kept: bring it in, too</numerusform>
            <numerusform>Discomfort of %n lifters is left out. &amp;They agreed that it is kept: bring it in, too</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::KeyingView</name>
    <message numerus="yes">
        <source>%1 of %n set(s) in the book</source>
        <translation>
            <numerusform>%1 of %n set in the book</numerusform>
            <numerusform>%1 of %n sets in the book</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 is in a trial and %n rating(s) of it aren&apos;t given. The same key again leaves them out.</source>
        <translation>
            <numerusform>%1 is in a trial and %n rating of it isn&apos;t given. The same key again leaves it out.</numerusform>
            <numerusform>%1 is in a trial and %n ratings of it aren&apos;t given. The same key again leaves them out.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::LinesPanel</name>
    <message numerus="yes">
        <source>%n lift line(s)   —   G goes here, Enter opens the chart, Y says why</source>
        <translation>
            <numerusform>%n lift line   —   G goes here, Enter opens the chart, Y says why</numerusform>
            <numerusform>%n lift lines   —   G goes here, Enter opens the chart, Y says why</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::LoadsAhead</name>
    <message numerus="yes">
        <source>%n slot(s) would be written otherwise after %1 · F shows them</source>
        <translation>
            <numerusform>%n slot would be written otherwise after %1 · F shows them</numerusform>
            <numerusform>%n slots would be written otherwise after %1 · F shows them</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n slot(s) would be written otherwise today · F shows them</source>
        <translation>
            <numerusform>%n slot would be written otherwise today · F shows them</numerusform>
            <numerusform>%n slots would be written otherwise today · F shows them</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::LockDialog</name>
    <message numerus="yes">
        <source>after %n minute(s) without a key or the mouse</source>
        <translation>
            <numerusform>after %n minute without a key or the mouse</numerusform>
            <numerusform>after %n minutes without a key or the mouse</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>That is not the passphrase. The next try is looked at in %n second(s).</source>
        <translation>
            <numerusform>That is not the passphrase. The next try is looked at in %n second.</numerusform>
            <numerusform>That is not the passphrase. The next try is looked at in %n seconds.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::LogbookBulk</name>
    <message numerus="yes">
        <source>Change %n planned slot(s) after today as well</source>
        <translation>
            <numerusform>Change %n planned slot after today as well</numerusform>
            <numerusform>Change %n planned slots after today as well</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::LogbookListModel</name>
    <message numerus="yes">
        <source>%n set(s)</source>
        <translation>
            <numerusform>%n set</numerusform>
            <numerusform>%n sets</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::LogbookView</name>
    <message numerus="yes">
        <source>%n session(s). Frame: deload, notch: discomfort.</source>
        <translation>
            <numerusform>%n session. Frame: deload, notch: discomfort.</numerusform>
            <numerusform>%n sessions. Frame: deload, notch: discomfort.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of %n session(s)</source>
        <translation>
            <numerusform>%1 of %n session</numerusform>
            <numerusform>%1 of %n sessions</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::PastePage</name>
    <message numerus="yes">
        <source>%n line(s) can’t be read; nothing comes in before they can.</source>
        <translation>
            <numerusform>%n line can’t be read; nothing comes in before it can.</numerusform>
            <numerusform>%n lines can’t be read; nothing comes in before they can.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s) to bring in.</source>
        <translation>
            <numerusform>%n set to bring in.</numerusform>
            <numerusform>%n sets to bring in.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s) came in. Undo takes them out again.</source>
        <translation>
            <numerusform>%n set came in. Undo takes them out again.</numerusform>
            <numerusform>%n sets came in. Undo takes them out again.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s) were there already.</source>
        <translation>
            <numerusform>%n set was there already.</numerusform>
            <numerusform>%n sets were there already.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::PlanPreview</name>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>and %n more</numerusform>
            <numerusform>and %n more</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::RackBoard</name>
    <message numerus="yes">
        <source>%n repetition(s)</source>
        <translation>
            <numerusform>%n repetition</numerusform>
            <numerusform>%n repetitions</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::RepetitionImport</name>
    <message numerus="yes">
        <source>%1: set %2, %n repetition(s)</source>
        <translation>
            <numerusform>%1: set %2, %n repetition</numerusform>
            <numerusform>%1: set %2, %n repetitions</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::RepetitionLine</name>
    <message numerus="yes">
        <source>%n repetition(s)</source>
        <translation>
            <numerusform>%n repetition</numerusform>
            <numerusform>%n repetitions</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::RestorePanel</name>
    <message numerus="yes">
        <source>%n lifter(s)</source>
        <translation>
            <numerusform>%n lifter</numerusform>
            <numerusform>%n lifters</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n session(s)</source>
        <translation>
            <numerusform>%n session</numerusform>
            <numerusform>%n sessions</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s)</source>
        <translation>
            <numerusform>%n set</numerusform>
            <numerusform>%n sets</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n set(s) say something else today.</source>
        <translation>
            <numerusform>%n set says something else today.</numerusform>
            <numerusform>%n sets say something else today.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>It isn&apos;t sound, so it can&apos;t be restored: %n finding(s). The first: %1</source>
        <translation>
            <numerusform>It isn&apos;t sound, so it can&apos;t be restored: %n finding. The first: %1</numerusform>
            <numerusform>It isn&apos;t sound, so it can&apos;t be restored: %n findings. The first: %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::RosterModel</name>
    <message numerus="yes">
        <source>%n flag(s) open</source>
        <translation>
            <numerusform>%n flag open</numerusform>
            <numerusform>%n flags open</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::RosterPane</name>
    <message numerus="yes">
        <source>%n lifter(s)</source>
        <translation>
            <numerusform>%n lifter</numerusform>
            <numerusform>%n lifters</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::RosterPicture</name>
    <message numerus="yes">
        <source>%n row(s) are on the clipboard as a table.</source>
        <translation>
            <numerusform>%n row is on the clipboard as a table.</numerusform>
            <numerusform>%n rows are on the clipboard as a table.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::RosterPictureModel</name>
    <message numerus="yes">
        <source>%n open</source>
        <translation>
            <numerusform>%n open</numerusform>
            <numerusform>%n open</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::ScreenLock</name>
    <message numerus="yes">
        <source>That was not the passphrase. The next try is looked at in %n second(s).</source>
        <translation>
            <numerusform>That was not the passphrase. The next try is looked at in %n second.</numerusform>
            <numerusform>That was not the passphrase. The next try is looked at in %n seconds.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::TrialsView</name>
    <message numerus="yes">
        <source>The trial is set up: %n session(s).</source>
        <translation>
            <numerusform>The trial is set up: %n session.</numerusform>
            <numerusform>The trial is set up: %n sessions.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::WeekPage</name>
    <message numerus="yes">
        <source>%n flag(s) open</source>
        <translation>
            <numerusform>%n flag open</numerusform>
            <numerusform>%n flags open</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>, about %n minute(s) left</source>
        <translation>
            <numerusform>, about %n minute left</numerusform>
            <numerusform>, about %n minutes left</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>; %n planned slot(s) changed</source>
        <translation>
            <numerusform>; %n planned slot changed</numerusform>
            <numerusform>; %n planned slots changed</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>steelyard::WeekStrip</name>
    <message numerus="yes">
        <source>%n set(s)</source>
        <translation>
            <numerusform>%n set</numerusform>
            <numerusform>%n sets</numerusform>
        </translation>
    </message>
</context>
</TS>
