package design

import (
	"context"
	"testing"

	"plashet/demo"
	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/job"
)

// What is offered as short, written into the job, lets a layout fit.
func TestMendFits(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job("courtyard-rill"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	a := Arrange(context.Background(), book, j, ArrangeWant{Elbows: 3}, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) > 0 || len(a.Outcome.Short) == 0 {
		t.Fatal("the demo was to have nothing that fits, and what would mend it")
	}
	for n := range a.Outcome.Short {
		next := j.Clone()
		list := a.Mend(j, n)
		if len(list) == 0 {
			t.Errorf("%s: nothing to write", a.Outcome.Short[n].What.Code)
		}
		for _, e := range list {
			if f := next.Set(e.Path, e.Text); f != nil {
				t.Errorf("%s: %v", e.Path, f)
			}
		}
		if b := Arrange(context.Background(), book, next, ArrangeWant{Elbows: 3, Best: 1}, nil); b.Outcome == nil || len(b.Outcome.Layouts) == 0 {
			t.Errorf("%s: with %v nothing fits", a.Outcome.Short[n].What.Code, list)
		}
	}
	if a.Mend(j, -1) != nil || a.Mend(j, len(a.Outcome.Short)) != nil {
		t.Error("a change that is not there")
	}
}

// On the side of the origin the wall moves with all that is placed from it.
func TestMendMovesWhatStandsBeside(t *testing.T) {
	j, faults := job.Read(demo.Job("courtyard-rill"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for path, text := range map[string]string{
		"/vault/length": "300 mm", "/vault/width": "300 mm", "/vault/outlet/wall": "right", "/vault/outlet/along": "100 mm",
		"/vault/obstacles/0/name": "rack", "/vault/obstacles/0/from/x": "10 mm", "/vault/obstacles/0/from/y": "0", "/vault/obstacles/0/from/z": "0",
		"/vault/obstacles/0/to/x": "20 mm", "/vault/obstacles/0/to/y": "20 mm", "/vault/obstacles/0/to/z": "20 mm",
	} {
		if f := j.Set(path, text); f != nil {
			t.Fatal(f)
		}
	}
	for _, c := range []struct{ code, wall, path, want string }{
		{arrange.ChangeLength, "right", "/vault/obstacles/0/from/x", "21 mm"},
		{arrange.ChangeWidth, "back", "/vault/obstacles/0/to/y", "31 mm"},
	} {
		j.Vault.Outlet.Wall = c.wall
		a := &Arranging{Units: j.System(), Outcome: &arrange.Outcome{Short: []arrange.Change{{What: trace.Message{Code: c.code}, By: 0.0103}}}}
		got := ""
		for _, e := range a.Mend(j, 0) {
			if e.Path == c.path {
				got = e.Text
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.path, got, c.want)
		}
		j.Vault.Outlet.Wall = "left"
		if list := a.Mend(j, 0); c.code == arrange.ChangeLength && len(list) != 1 {
			t.Errorf("the far wall gives way, yet %v", list)
		}
	}
	for code, want := range map[string]string{arrange.ChangeUp: "/vault/outlet/height", arrange.ChangeDown: "/vault/outlet/height", arrange.ChangeLeft: "/vault/outlet/along", arrange.ChangeRight: "/vault/outlet/along", arrange.ChangeDepth: "/vault/depth"} {
		a := &Arranging{Units: j.System(), Outcome: &arrange.Outcome{Short: []arrange.Change{{What: trace.Message{Code: code}, By: 0.0103}}}}
		if list := a.Mend(j, 0); len(list) != 1 || list[0].Path != want {
			t.Errorf("%s: %v", code, list)
		}
	}
}

// An obstacle is written where it is moved to, both its corners; what is to be taken
// out is for a person to take out.
func TestMendObstacle(t *testing.T) {
	j := &job.Job{}
	for _, e := range []Entry{
		{"/units", "metric"},
		{"/vault/obstacles/0/name", "float"},
		{"/vault/obstacles/1/name", "rack"},
		{"/vault/obstacles/1/from/x", "10 mm"},
		{"/vault/obstacles/1/from/y", "20 mm"},
		{"/vault/obstacles/1/from/z", "30 mm"},
		{"/vault/obstacles/1/to/x", "40 mm"},
		{"/vault/obstacles/1/to/y", "50 mm"},
		{"/vault/obstacles/1/to/z", "60 mm"},
	} {
		if f := j.Set(e.Path, e.Text); f != nil {
			t.Fatal(f)
		}
	}
	for code, want := range map[string][2]string{
		arrange.ChangeObstacleUp: {"/vault/obstacles/1/from/z 41 mm", "/vault/obstacles/1/to/z 71 mm"}, arrange.ChangeObstacleDown: {"/vault/obstacles/1/from/z 19 mm", "/vault/obstacles/1/to/z 49 mm"},
		arrange.ChangeObstacleRight: {"/vault/obstacles/1/from/x 21 mm", "/vault/obstacles/1/to/x 51 mm"}, arrange.ChangeObstacleLeft: {"/vault/obstacles/1/from/x -1 mm", "/vault/obstacles/1/to/x 29 mm"},
		arrange.ChangeObstacleBack: {"/vault/obstacles/1/from/y 31 mm", "/vault/obstacles/1/to/y 61 mm"}, arrange.ChangeObstacleFront: {"/vault/obstacles/1/from/y 9 mm", "/vault/obstacles/1/to/y 39 mm"},
	} {
		a := &Arranging{Units: j.System(), Outcome: &arrange.Outcome{Short: []arrange.Change{{What: trace.Message{Code: code}, Obstacle: 2, By: 0.0103}}}}
		list := a.Mend(j, 0)
		if len(list) != 2 || list[0].Path+" "+list[0].Text != want[0] || list[1].Path+" "+list[1].Text != want[1] {
			t.Errorf("%s: %v, want %v", code, list, want)
		}
	}
	a := &Arranging{Units: j.System(), Outcome: &arrange.Outcome{Short: []arrange.Change{{What: trace.Message{Code: arrange.ChangeObstacleOut}, Obstacle: 2}}}}
	if list := a.Mend(j, 0); len(list) != 0 {
		t.Errorf("an obstacle is taken out unasked: %v", list)
	}
}
