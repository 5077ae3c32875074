package app

import (
	"context"
	"net/http"
	"strconv"
	"strings"

	"plashet/answer"
	"plashet/engine/arrange"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/job"
)

// apiSearch is a search that runs beside the requests.
type apiSearch struct {
	At       string                   `json:"at" doc:"address at which it is asked how far it is, and stopped"`
	State    string                   `json:"state" one:"waiting running done failed" doc:"waiting for room, running, done (also when it was stopped: see claim of the result), or failed on our side"`
	Progress string                   `json:"progress,omitempty" doc:"how far it is, in words"`
	Stale    bool                     `json:"stale,omitempty" doc:"the job has changed since it was begun"`
	Result   *answer.ArrangedDocument `json:"result,omitempty" doc:"what it found, once it is done"`
}

// runOf is the kind of these searches among the runs. They are not those of the
// pages, so that a program never ends what a person waits for.
const runOf = "asked arrange"

// apiArrange begins a search for a job of the store.
func (a *app) apiArrange(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	at := underInterface + "/jobs/" + o.rev.ID + "/arrange"
	return a.beginArrange(w, r, key(runOf, o), o.rev.Digest, at, o.job, o.faults)
}

// apiArrangeSent begins one for a job that is sent. It is known by a digest of
// the job and of what is asked, which nobody can guess who has not the job.
func (a *app) apiArrangeSent(w http.ResponseWriter, r *http.Request) error {
	data, j, faults, err := a.sentJob(r)
	if err != nil {
		return err
	}
	of := digest(data)
	run := digest([]byte(of + " " + r.URL.Query().Get("elbows")))
	return a.beginArrange(w, r, runOf+" sent "+run, of, underInterface+"/arrange/"+run, j, faults)
}

func (a *app) beginArrange(w http.ResponseWriter, r *http.Request, key, digest, at string, j *job.Job, faults []trace.Fault) error {
	if a.Runs == nil {
		return a.refuse(http.StatusServiceUnavailable, "app.api.nowork")
	}
	of := digest + " " + r.URL.Query().Get("elbows")
	run, there := a.Runs.Look(key)
	if !there || run.Of != of || run.Failed {
		want := design.ArrangeWant{Elbows: usualElbows}
		if n, err := strconv.Atoi(r.URL.Query().Get("elbows")); err == nil {
			want.Elbows = n
		}
		if !a.Runs.Start(key, of, func(ctx context.Context, tell func(string)) any {
			found := design.Arrange(ctx, a.Book, j, want, func(p arrange.Progress) { tell(answer.Progress(p, a.Language)) }, faults...)
			return &sought{found, j, faults, want.Elbows}
		}) {
			return a.refuse(http.StatusServiceUnavailable, "app.error.busy")
		}
		run, _ = a.Runs.Look(key)
	}
	w.Header().Set("Location", at)
	return sendJSON(w, http.StatusAccepted, a.runTold(run, at, digest))
}

// runTold tells of a run; digest is of the job as it stands now.
func (a *app) runTold(run Run, at, digest string) apiSearch {
	x := apiSearch{At: at, State: "running", Progress: run.Progress, Stale: digest != "" && !strings.HasPrefix(run.Of, digest+" ")}
	switch {
	case run.Failed:
		x.State = "failed"
	case run.Done:
		x.State = "done"
		if s, ok := run.Result.(*sought); ok {
			doc := answer.BuildArranged(s.a, s.faults, a.Language)
			x.Result = &doc
		}
	case run.Waits:
		x.State = "waiting"
	}
	return x
}

// lookArrange tells of the run of a key; stop ends it first.
func (a *app) lookArrange(w http.ResponseWriter, key, at, digest string, stop bool) error {
	if a.Runs == nil {
		return a.refuse(http.StatusServiceUnavailable, "app.api.nowork")
	}
	run, there := a.Runs.Look(key)
	if !there {
		return a.refuse(http.StatusNotFound, "app.api.norun")
	}
	if stop {
		a.Runs.Stop(key)
		run, _ = a.Runs.Look(key)
	}
	return sendJSON(w, http.StatusOK, a.runTold(run, at, digest))
}

func (a *app) ofJob(w http.ResponseWriter, r *http.Request, stop bool) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	return a.lookArrange(w, key(runOf, o), underInterface+"/jobs/"+o.rev.ID+"/arrange", o.rev.Digest, stop)
}

func (a *app) ofSent(w http.ResponseWriter, r *http.Request, stop bool) error {
	run := r.PathValue("run")
	return a.lookArrange(w, runOf+" sent "+run, underInterface+"/arrange/"+run, "", stop)
}

func (a *app) apiArranged(w http.ResponseWriter, r *http.Request) error { return a.ofJob(w, r, false) }

func (a *app) apiStop(w http.ResponseWriter, r *http.Request) error { return a.ofJob(w, r, true) }

func (a *app) apiArrangedSent(w http.ResponseWriter, r *http.Request) error {
	return a.ofSent(w, r, false)
}

func (a *app) apiStopSent(w http.ResponseWriter, r *http.Request) error { return a.ofSent(w, r, true) }
